namespace ZoneControl.Logic.Tests;

/// <summary>Two that want different things at once, put before the controller.</summary>
/// <param name="One">One of them, as the precedence line names it.</param>
/// <param name="Other">The other.</param>
/// <param name="Scene">What happens, in words.</param>
/// <param name="OneWay">The outputs if the one has its way.</param>
/// <param name="OtherWay">The outputs if the other has.</param>
/// <param name="Both">The scene.</param>
/// <param name="OtherAlone">The same without the one.</param>
internal sealed record Contest(
    string One,
    string Other,
    string Scene,
    Func<OutputImage, bool> OneWay,
    Func<OutputImage, bool> OtherWay,
    Func<Rig> Both,
    Func<Rig> OtherAlone)
{
    /// <summary>Whoever has its way in the scene, and whoever has not.</summary>
    public (string Winner, string Loser) Fight()
    {
        OutputImage seen = Both().Out;
        bool one = OneWay(seen);
        Assert.True(one != OtherWay(seen), $"{One} and {Other}: nobody or both have their way: {Published.Of(seen)}");
        return one ? (One, Other) : (Other, One);
    }

    /// <summary>Without the one, the other has its way: so there is something to win.</summary>
    public bool IsOne
    {
        get
        {
            OutputImage seen = OtherAlone().Out;
            return OtherWay(seen) && !OneWay(seen);
        }
    }
}
