namespace ZoneControl.Board;

/// <summary>The words of the board's log. Its grammar is in firmware/README.md; whoever reads a log takes its words from here.</summary>
public static class LogWords
{
    /// <summary>The grammar's number, in the boot line.</summary>
    public const int Grammar = 1;

    /// <summary>How many words <see cref="Hold"/> has.</summary>
    public const int Holds = 14;

    /// <summary>How many words <see cref="Alarm"/> has.</summary>
    public const int Alarms = 10;

    /// <summary>A zone, from 0: "z1" for the first.</summary>
    public static string Zone(int index) => "z" + (index + 1).ToString();

    /// <summary>Word of a contact of the house by the number of its bit.</summary>
    public static string Contact(int place)
    {
        switch (place)
        {
            case 0:
                return "season";
            case 1:
                return "flow";
            case 2:
                return "limit";
            case 3:
                return "freeze";
            case 4:
                return "priority";
            case 5:
                return "reset";
            case 6:
                return "supply";
            case 7:
                return "service-pump";
            default:
                return "unknown";
        }
    }

    /// <summary>Word of a hold reason by its number.</summary>
    public static string Hold(int reason)
    {
        switch (reason)
        {
            case 0:
                return "none";
            case 1:
                return "service";
            case 2:
                return "priority";
            case 3:
                return "lockout";
            case 4:
                return "valve-latched";
            case 5:
                return "limit";
            case 6:
                return "flow-latched";
            case 7:
                return "pump-stuck";
            case 8:
                return "supply";
            case 9:
                return "too-few-valves";
            case 10:
                return "proof";
            case 11:
                return "start-delay";
            case 12:
                return "rest";
            case 13:
                return "reset";
            default:
                return "unknown";
        }
    }

    /// <summary>Word of an alarm of the house by the number of its bit.</summary>
    public static string Alarm(int place)
    {
        switch (place)
        {
            case 0:
                return "flow-trip";
            case 1:
                return "flow-latched";
            case 2:
                return "pump-stuck";
            case 3:
                return "limit-latched";
            case 4:
                return "frost-in-lockout";
            case 5:
                return "priority-long";
            case 6:
                return "exercise-put-off";
            case 7:
                return "time-fault";
            case 8:
                return "no-supply";
            case 9:
                return "service-ended";
            default:
                return "unknown";
        }
    }

    /// <summary>Word of a fault of the board, a constant of <see cref="BoardFault"/>.</summary>
    public static string Fault(int fault)
    {
        switch (fault)
        {
            case BoardFault.Settings:
                return "settings";
            case BoardFault.PinPlan:
                return "pin-plan";
            case BoardFault.ReadBack:
                return "read-back";
            case BoardFault.InputChain:
                return "input-chain";
            case BoardFault.Thrown:
                return "exception";
            default:
                return "unknown";
        }
    }
}
