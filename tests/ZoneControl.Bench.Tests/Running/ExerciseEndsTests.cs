using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Running;

public class ExerciseEndsTests
{
    private static readonly Frame _off = new() { Ms = 0 };

    private static readonly Frame _open = new() { Ms = 1_000, Valves = 3 };

    private static readonly Frame _runs = _open with { Ms = 2_000, Pump = true };

    private static readonly Frame _stops = _open with { Ms = 3_000 };

    [Fact]
    public void A_run_that_nobody_asks_for_is_an_exercise_and_ends_with_the_pump() =>
        Assert.Equal([3_000], Ends(_off, _open, _runs, _stops, _off with { Ms = 4_000 }));

    [Fact]
    public void Calls_in_lockout_ask_for_nothing() => Assert.Equal(
        [3_000], Ends(Locked(_off), Locked(_open), Locked(_runs), Locked(_stops)));

    [Fact]
    public void A_run_that_was_called_for_is_none() =>
        Assert.Empty(Ends(_off, _open with { Calls = 1 }, _runs with { Calls = 1 }, _runs, _stops));

    [Fact]
    public void A_call_that_takes_over_ends_it() =>
        Assert.Empty(Ends(_off, _open, _runs, _runs with { Ms = 2_500, Calls = 1 }, _stops));

    [Fact]
    public void Frost_and_hands_ask() => Assert.All(
        [_open with { Contacts = Contact.Freeze }, _open with { Contacts = Contact.ServicePump }, _open with { Hands = 1 }],
        asked => Assert.Empty(Ends(_off, asked, _runs, _stops)));

    [Fact]
    public void One_that_was_put_off_is_none() =>
        Assert.Empty(Ends(_off, _open, _runs, _stops with { Alarms = Alarm.ExercisePutOff }));

    private static Frame Locked(Frame frame) => frame with { Calls = 1, Contacts = Contact.Lockout };

    private static IReadOnlyList<long> Ends(params Frame[] frames) => ExerciseEnds.Of(new Trace(frames, [], 10_000));
}
