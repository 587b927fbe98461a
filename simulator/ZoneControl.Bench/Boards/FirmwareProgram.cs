using System.Reflection;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Boards;

/// <summary>A running program of a <see cref="FirmwareImage"/>, reached through delegates.</summary>
public sealed class FirmwareProgram
{
    private const int PublishedCount = 20; // Published.Count of the firmware

    private readonly int[] _published = new int[PublishedCount];
    private readonly Action<int[]> _copy;
    private readonly Func<int> _fault;
    private readonly Func<string> _faultText;
    private readonly Func<int> _overruns;

    internal FirmwareProgram(object program)
    {
        Start = Bind<Action>(program, "Start");
        Scan = Bind<Action>(program, "Scan");
        Sample = Bind<Action>(program, "Sample");
        NextLine = Bind<Func<string?>>(program, "NextLine");
        _copy = Bind<Action<int[]>>(program, "CopyPublished");
        _fault = Bind<Func<int>>(program, "get_Fault");
        _faultText = Bind<Func<string>>(program, "get_FaultText");
        _overruns = Bind<Func<int>>(program, "get_Overruns");
    }

    /// <summary>Checks what it was given and opens its pins.</summary>
    public Action Start { get; }

    /// <summary>One scan.</summary>
    public Action Scan { get; }

    /// <summary>A look at the inputs between scans.</summary>
    public Action Sample { get; }

    /// <summary>The next line of its log, or null.</summary>
    public Func<string?> NextLine { get; }

    /// <summary>A constant of BoardFault.</summary>
    public int Fault => _fault();

    /// <summary>What was found at the fault.</summary>
    public string FaultText => _faultText();

    /// <summary>Scans that took longer than their period.</summary>
    public int Overruns => _overruns();

    /// <summary>Copies what its last scan published; valves, pump and heat are left to the wires.</summary>
    public void CopyPublished(OutputImage image)
    {
        int[] p = _published;
        _copy(p);
        image.PowerUp = p[0] != 0;
        image.AcceptedCalls = p[1];
        image.AcceptedSwitches = p[2];
        image.AcceptedSenses = p[3];
        image.AcceptedHands = p[4];
        image.AcceptedContacts = p[5];
        image.Hold = (HoldReason)p[9];
        image.LateValves = p[10];
        image.LatchedValves = p[11];
        image.EarlySwitches = p[12];
        image.StuckSwitches = p[13];
        image.Alarms = p[14];
        image.ProvenValves = p[15];
        image.ScanMs = ((long)p[16] << 32) | (uint)p[17];
        image.NextDeadlineMs = ((long)p[18] << 32) | (uint)p[19];
    }

    private static T Bind<T>(object program, string name)
        where T : Delegate
    {
        MethodInfo method = program.GetType().GetMethod(name)
            ?? throw new MissingMethodException(program.GetType().FullName, name);
        return method.CreateDelegate<T>(program);
    }
}
