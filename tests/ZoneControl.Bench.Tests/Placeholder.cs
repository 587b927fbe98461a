namespace ZoneControl.Bench.Tests;
public class Placeholder { [Fact] public void Builds() => Assert.True(true); }
