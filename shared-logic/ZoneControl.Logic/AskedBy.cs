namespace ZoneControl.Logic;

/// <summary>What asks for the pump. The order is that of who wins.</summary>
public enum AskedBy
{
    /// <summary>Nothing.</summary>
    Nobody = 0,

    /// <summary>A run without heat, so that pump and valves do not seize.</summary>
    Exercise = 1,

    /// <summary>Thermostats, or a gated panel that energises its valves.</summary>
    Calls = 2,

    /// <summary>The freeze contact.</summary>
    Freeze = 3,
}
