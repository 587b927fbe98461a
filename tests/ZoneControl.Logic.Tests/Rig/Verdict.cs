namespace ZoneControl.Logic.Tests;

/// <summary>Passes on nothing found; fails with the whole finding, which an assertion on null would cut short.</summary>
internal static class Verdict
{
    public static void IsClean(string? finding)
    {
        if (finding != null)
            Assert.Fail(finding);
    }
}
