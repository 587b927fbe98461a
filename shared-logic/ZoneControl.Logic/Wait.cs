namespace ZoneControl.Logic;

/// <summary>Times to wait, ms, as the mechanisms report them to the deadline.</summary>
internal static class Wait
{
    /// <summary>Longer than any setting: only a contact can end it.</summary>
    public const int Forever = int.MaxValue;

    /// <summary>An age moved on by <paramref name="dt"/>, not beyond its cap. Neither is above 7 days, so the sum cannot overflow.</summary>
    public static int Age(int age, int dt, int cap)
    {
        age += dt;
        return age > cap ? cap : age;
    }

    /// <summary>The sooner of two waits.</summary>
    public static int Sooner(int a, int b) => a < b ? a : b;

    /// <summary>
    /// A wait of some seconds, ms; never more than half the longest setting, so that a scan that comes late is still counted
    /// in full. A deadline that comes too soon only costs a scan.
    /// </summary>
    public static int Seconds(int seconds) =>
        seconds > ControllerSettings.LongestMs / 2000 ? ControllerSettings.LongestMs / 2 : seconds * 1000;
}
