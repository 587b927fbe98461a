namespace ZoneControl.Logic;

/// <summary>
/// Short runs without heat, so that pump and valves do not seize.
/// <para>
/// SEASON-EXERCISE: when the pump has not run for the interval, in lockout or out of it, every zone is opened and the pump
/// run for a while, under every rule that binds a call. Anything else that asks takes over. What forbids it puts it off,
/// and that is an alarm until an exercise has been done.
/// </para>
/// </summary>
internal static class Exercise
{
    /// <returns>ms until an exercise is due, done or given up.</returns>
    public static int Step(ControllerSettings s, ControllerState x, int dt)
    {
        if (s.ExerciseIntervalS == 0)
            return Wait.Forever;
        if (x.Pump)
        {
            x.IdleS = 0;
            x.IdlePartMs = 0;
        }
        else
        {
            CountIdle(s, x, dt);
        }

        int next = x.Exercising ? Continue(s, x, dt) : Begin(s, x);
        if (x.Exercising)
        {
            x.Asked = s.DrivenZones & ~x.Latched;
            x.AskedBy = AskedBy.Exercise;
        }

        return next;
    }

    private static void CountIdle(ControllerSettings s, ControllerState x, int dt)
    {
        int ms = x.IdlePartMs + dt;
        int seconds = ms / 1000;
        x.IdlePartMs = ms - seconds * 1000;
        x.IdleS = Wait.Age(x.IdleS, seconds, s.ExerciseIntervalS);
        if (x.IdleS == s.ExerciseIntervalS)
            x.IdlePartMs = 0;
    }

    private static int Begin(ControllerSettings s, ControllerState x)
    {
        if (x.IdleS < s.ExerciseIntervalS)
            return x.Pump ? Wait.Forever : Wait.Seconds(s.ExerciseIntervalS - x.IdleS) - x.IdlePartMs;
        if (x.Asked != 0 || x.Service)
            return Wait.Forever;
        if (Forbidden(s, x))
            return GiveUp(s, x);
        x.Exercising = true;
        x.ExerciseAgeMs = 0;
        x.ExerciseRanMs = 0;
        return s.ExerciseLimitMs;
    }

    private static int Continue(ControllerSettings s, ControllerState x, int dt)
    {
        x.ExerciseAgeMs = Wait.Age(x.ExerciseAgeMs, dt, s.ExerciseLimitMs);
        if (x.Pump)
            x.ExerciseRanMs = Wait.Age(x.ExerciseRanMs, dt, s.ExerciseRunMs);
        if (x.Asked != 0 || x.Service)
        {
            End(x);
            return Wait.Forever;
        }

        if (Forbidden(s, x))
            return GiveUp(s, x);
        int toRun = s.ExerciseRunMs - x.ExerciseRanMs;
        int zones = s.DrivenZones & ~x.Latched;
        bool allMoved = (zones & ~(x.Proven | x.Sick)) == 0;
        if (toRun <= 0 && allMoved)
        {
            x.PutOff = false;
            End(x);
            return Wait.Forever;
        }

        int toLimit = s.ExerciseLimitMs - x.ExerciseAgeMs;
        if (toLimit <= 0)
            return GiveUp(s, x);
        return x.Pump && toRun > 0 ? Wait.Sooner(toRun, toLimit) : toLimit;
    }

    private static bool Forbidden(ControllerSettings s, ControllerState x) =>
        x.LimitLatched || x.FlowLatched || x.PumpStuck || x.PriorityHolds
        || !x.Supplied || (s.DrivenZones & ~x.Latched) == 0;

    private static int GiveUp(ControllerSettings s, ControllerState x)
    {
        End(x);
        x.PutOff = true;
        x.IdleS = s.ExerciseIntervalS - s.ExerciseRetryS; // a retry is never longer than the interval (SettingsCheck)
        x.IdlePartMs = 0;
        return Wait.Seconds(s.ExerciseRetryS);
    }

    private static void End(ControllerState x)
    {
        x.Exercising = false;
        x.ExerciseAgeMs = 0;
        x.ExerciseRanMs = 0;
    }
}
