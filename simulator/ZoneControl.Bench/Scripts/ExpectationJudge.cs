using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;

namespace ZoneControl.Bench.Scripts;

/// <summary>Says of each expectation whether a trace meets it.</summary>
public static class ExpectationJudge
{
    /// <summary>A verdict for each expectation, in the script's order.</summary>
    public static IReadOnlyList<ExpectationVerdict> Judge(Script script, House house, Trace trace) =>
        throw new NotImplementedException(script.ToString() + house + trace);
}
