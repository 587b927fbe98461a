using System.Globalization;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Captures;

/// <summary>
/// A trace as a value change dump (IEEE 1364), in ms. Signals bear the names of <see cref="ChannelNames"/>: a scope a zone, one
/// for contacts before debounce, one for accepted ones, one for hold reasons (a wire each) and one for alarms. Travel and flows
/// are reals, the clock and the announced deadline 64-bit two's complement in ms; a deadline that never comes is the largest.
/// </summary>
public static class TraceVcd
{
    private static readonly (string Word, Func<Frame, PlantSample, int> Mask)[] _zoneWires =
    [
        ("thermostat", (_, sample) => sample.RawCalls), ("call", (frame, _) => frame.Calls),
        ("end_switch_contact", (_, sample) => sample.RawSwitches), ("end_switch", (frame, _) => frame.EndSwitches),
        ("sense_contact", (_, sample) => sample.RawSenses), ("sense", (frame, _) => frame.Senses),
        ("hand", (frame, _) => frame.Hands), ("valve", (frame, _) => frame.Valves), ("proven", (frame, _) => frame.ProvenValves),
        ("late", (frame, _) => frame.LateValves), ("latched", (frame, _) => frame.LatchedValves),
        ("switch_early", (frame, _) => frame.EarlySwitches), ("switch_stuck", (frame, _) => frame.StuckSwitches),
    ];

    /// <summary>Writes the dump.</summary>
    /// <param name="into">Where to.</param>
    /// <param name="trace">The trace.</param>
    /// <param name="house">The house whose zones the trace has.</param>
    public static void Write(TextWriter into, Trace trace, House house)
    {
        ArgumentNullException.ThrowIfNull(into);
        ArgumentNullException.ThrowIfNull(trace);
        ArgumentNullException.ThrowIfNull(house);
        List<Signal> signals = Signals(house);
        into.Write("$version ZoneControl bench $end\n$timescale 1 ms $end\n$scope module zonecontrol $end\n");
        Declare(into, signals);
        into.Write("$upscope $end\n$enddefinitions $end\n");
        string[] shown = new string[signals.Count];
        long at = -1;
        foreach (TraceMoment moment in LastOfEach(TraceMoments.Of(trace)))
        {
            bool first = at < 0;
            at = moment.Ms;
            into.Write(first ? $"#{at}\n$dumpvars\n" : $"#{at}\n");
            for (int i = 0; i < shown.Length; i++)
            {
                string value = signals[i].Value(moment);
                if (value == shown[i])
                    continue;
                shown[i] = value;
                into.Write(value);
                into.Write(value.Length > 1 ? " " : "");
                into.Write(Code(i));
                into.Write('\n');
            }

            if (first)
                into.Write("$end\n");
        }
    }

    // A dump has one state a moment: that after the step.
    private static IEnumerable<TraceMoment> LastOfEach(IEnumerable<TraceMoment> moments)
    {
        TraceMoment? before = null;
        foreach (TraceMoment moment in moments)
        {
            if (before is { } last && last.Ms < moment.Ms)
                yield return last;
            before = moment;
        }

        if (before is { } end)
            yield return end;
    }

    private static List<Signal> Signals(House house)
    {
        var signals = new List<Signal>
        {
            Wire("", "powered", (frame, _) => !frame.Unpowered),
            Wire("", "power_up", (frame, _) => frame.PowerUp),
            Wire("", "pump", (frame, _) => frame.Pump),
            Wire("", "heat_demand", (frame, _) => frame.Heat),
            new("", "wire 1", "scan", moment => moment.Turn ? "1" : "0"),
            new("", "wire 64", "clock_ahead", moment => Bits(moment.Frame.ClockAheadMs)),
            new("", "wire 64", "deadline", moment => Bits(moment.Frame.NextDeadlineMs)),
            Real("", "pump_flow_L_per_min", sample => sample.PumpFlowM3s * 60_000),
            Real("", "trapped_water_degC", sample => sample.TrappedWaterC),
            Real("", "deadhead_s", sample => sample.DeadheadS),
        };
        for (int zone = 0; zone < house.Zones.Count; zone++)
        {
            (int bit, int place, string name) = (1 << zone, zone, house.Zones[zone].Name);
            foreach ((string word, Func<Frame, PlantSample, int> mask) in _zoneWires)
                signals.Add(Wire(name, word, (frame, sample) => (mask(frame, sample) & bit) != 0));
            signals.Add(Real(name, "travel", sample => sample.Travel[place]));
            signals.Add(Real(name, "flow_L_per_min", sample => sample.ZoneFlowM3s[place] * 60_000));
        }

        int[] contacts = [.. Enumerable.Range(0, Contact.Count).Select(place => 1 << place)];
        signals.AddRange(contacts.Select(contact =>
            Wire("contact", ChannelNames.ContactWord(contact), (_, sample) => (sample.RawContacts & contact) != 0)));
        signals.AddRange(contacts.Select(contact =>
            Wire("accepted", ChannelNames.ContactWord(contact), (frame, _) => (frame.Contacts & contact) != 0)));
        signals.AddRange(HoldWords.All.Skip(1).Select(hold =>
            Wire("hold", hold.Word.Replace(' ', '_'), (frame, _) => frame.Hold == hold.Reason)));
        signals.AddRange(AlarmWords.All.Select(alarm =>
            Wire("alarm", alarm.Word.Replace(' ', '_'), (frame, _) => (frame.Alarms & alarm.Alarm) != 0)));
        return signals;
    }

    private static void Declare(TextWriter into, List<Signal> signals)
    {
        string scope = "";
        for (int i = 0; i < signals.Count; i++)
        {
            if (signals[i].Scope != scope)
            {
                if (scope.Length > 0)
                    into.Write("$upscope $end\n");
                scope = signals[i].Scope;
                into.Write($"$scope module {scope} $end\n");
            }

            into.Write($"$var {signals[i].Type} {Code(i)} {signals[i].Name} $end\n");
        }

        if (scope.Length > 0)
            into.Write("$upscope $end\n");
    }

    private static Signal Wire(string scope, string name, Func<Frame, PlantSample, bool> on) =>
        new(scope, "wire 1", name, moment => on(moment.Frame, moment.Sample) ? "1" : "0");

    private static Signal Real(string scope, string name, Func<PlantSample, double> value) =>
        new(scope, "real 64", name, moment => "r" + Math.Round(value(moment.Sample), 6).ToString("0.######", CultureInfo.InvariantCulture));

    private static string Bits(long value) => "b" + Convert.ToString(value, 2);

    // The codes are the printable letters of ASCII from ! to ~, least first.
    private static string Code(int number)
    {
        const int Letters = 94;
        string code = "";
        for (int rest = number; code.Length == 0 || rest > 0; rest /= Letters)
            code += (char)('!' + (rest % Letters));
        return code;
    }

    private sealed record Signal(string Scope, string Type, string Name, Func<TraceMoment, string> Value);
}
