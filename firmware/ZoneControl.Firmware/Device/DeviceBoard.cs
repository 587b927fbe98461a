using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Firmware;

/// <summary>Builds the program on the chip's own pins and clock.</summary>
public static class DeviceBoard
{
    /// <summary>For settings and plan that are filled already.</summary>
    public static BoardProgram Of(ControllerSettings settings, BoardPlan plan, string[] names, string stated) =>
        new BoardProgram(settings, plan, names, stated, new GpioPins(), new BoardClock());

    /// <summary>For settings and plan as words: the bench's way in.</summary>
    public static BoardProgram FromWords(int[] words, string[] names, string stated)
    {
        var settings = new ControllerSettings();
        var plan = new BoardPlan();
        SettingsWords.Read(words, settings, plan);
        return Of(settings, plan, names, stated);
    }
}
