namespace ZoneControl.Bench.Seasons;

/// <summary>Strokes one zone with the pump off and notes what its terminals and the person at the manifold say.</summary>
internal static class StrokeTest
{
    public static Stroke Of(HandDesk desk, int zone)
    {
        int bit = 1 << zone;
        Stroke NotTried(string why) => new() { Zone = zone, NotTried = why };
        if ((desk.Settings.GatedZones & bit) != 0)
            return NotTried("a panel drives its valves; stroke it from there");
        if (desk.PumpRunsUnasked)
            return NotTried(HandDesk.WaterMoves);
        if (desk.Patience(zone) + desk.Settings.CallDebounceMs >= desk.Settings.ServiceLimitMs)
            return NotTried("service_limit is too short for its stroke");

        int restingMade = desk.Shown.EndSwitches;
        desk.Hands(bit, pump: false);
        if (!desk.Until(() => (desk.Shown.Valves & bit) != 0, desk.Settings.CallDebounceMs + 1000L))
        {
            desk.Hands(0, pump: false);
            return NotTried($"the controller did not energise it: {desk.Why}");
        }

        long began = desk.NowMs;
        desk.Witness.Begin(zone, began);
        long? made = null;
        int others = 0;
        long? otherAt = null;
        bool flow = false;
        bool brokenOff = desk.Until(
            () =>
            {
                int news = desk.Shown.EndSwitches & ~restingMade;
                if ((news & bit) != 0)
                    made ??= desk.NowMs - began;
                others |= news & ~bit;
                if (others != 0)
                    otherAt ??= desk.NowMs - began;
                flow |= desk.SeesFlow;
                return desk.PumpRunsUnasked;
            },
            desk.Patience(zone));
        long watched = desk.NowMs - began;
        StrokeSighting seen = desk.Witness.Stroke(zone);
        (long? broke, bool closingFlow) = Close(desk, bit, made is not null);
        return new Stroke
        {
            Zone = zone,
            BrokenOff = brokenOff,
            SwitchMadeMs = made,
            SwitchBrokeMs = broke,
            OtherSwitches = others,
            OtherSwitchMs = otherAt,
            WatchedMs = watched,
            SwitchMadeAtRest = (restingMade & bit) != 0,
            FlowWithPumpOff = flow || closingFlow,
            Seen = seen,
        };
    }

    private static (long? BrokeMs, bool Flow) Close(HandDesk desk, int bit, bool watch)
    {
        desk.Hands(0, pump: false);
        desk.Until(() => (desk.Shown.Valves & bit) == 0, desk.Settings.CallDebounceMs + desk.Settings.PumpRundownMs + 1000L);
        long released = desk.NowMs;
        long? broke = null;
        bool flow = false;
        desk.Until(
            () =>
            {
                if (watch && (desk.Shown.EndSwitches & bit) == 0)
                    broke ??= desk.NowMs - released;
                flow |= desk.SeesFlow;
                return desk.PumpRunsByItself;
            },
            desk.SlowestClosingMs);
        return (broke, flow);
    }
}
