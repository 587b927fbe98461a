namespace ZoneControl.Board;

/// <summary>Names of what pins do, for messages.</summary>
public static class PinNames
{
    /// <summary>A role in words: "call z1", "contact season", "pump".</summary>
    public static string OfRole(int role)
    {
        int index = Role.Index(role);
        switch (Role.Kind(role))
        {
            case Role.Contact:
                return "contact " + LogWords.Contact(index);
            case Role.Call:
                return "call " + LogWords.Zone(index);
            case Role.Switch:
                return "end switch " + LogWords.Zone(index);
            case Role.Sense:
                return "sense " + LogWords.Zone(index);
            case Role.Hand:
                return "hand switch " + LogWords.Zone(index);
            case Role.Valve:
                return "valve " + LogWords.Zone(index);
            case Role.Pump:
                return "pump";
            default:
                return "heat demand";
        }
    }

    /// <summary>A pin of the chains in words.</summary>
    public static string OfChainPin(int place)
    {
        switch (place)
        {
            case BoardPlan.Clock:
                return "chain clock";
            case BoardPlan.Strobe:
                return "chain strobe";
            case BoardPlan.OutputData:
                return "output data";
            case BoardPlan.InputData:
                return "input data";
            case BoardPlan.ReadBack:
                return "read-back";
            default:
                return "output enable";
        }
    }

    /// <summary>Whether a pin of the chains is driven by the board.</summary>
    public static bool ChainPinIsOutput(int place) => place != BoardPlan.InputData && place != BoardPlan.ReadBack;
}
