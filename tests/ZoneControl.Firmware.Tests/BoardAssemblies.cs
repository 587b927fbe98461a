using ZoneControl.Bench.Boards;
using ZoneControl.Logic.Tests;

namespace ZoneControl.Firmware.Tests;

/// <summary>Everything that goes onto the board, as compiled for it, and the core library that awaits it there.</summary>
internal static class BoardAssemblies
{
    public static IReadOnlyList<string> Files { get; } = ["ZoneControl.Firmware.exe", "ZoneControl.Board.dll", "ZoneControl.Logic.dll"];

    public static IReadOnlyList<string> StandIns { get; } = ["System.Device.Gpio.dll", "nanoFramework.Hardware.Esp32.dll"];

    public static LogicAssembly Open(string file) => new(Path.Combine(FirmwareImage.Folder, file));

    public static LogicAssembly CoreLibrary() => new(Path.Combine(AppContext.BaseDirectory, "board", "mscorlib.dll"));
}
