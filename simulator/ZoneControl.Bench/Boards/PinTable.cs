using ZoneControl.Bench.Houses;
using ZoneControl.Board;

namespace ZoneControl.Bench.Boards;

/// <summary>The pin table of a plan.</summary>
internal static class PinTable
{
    public static IReadOnlyList<PinLine> Of(House house, BoardPlan plan)
    {
        List<PinLine> lines = [new(plan.HeartbeatPin, true, "heartbeat", "still")];
        if (plan.Arrangement == BoardPlan.Chains)
        {
            for (int place = 0; place < BoardPlan.ChainPinCount; place++)
            {
                bool drives = PinNames.ChainPinIsOutput(place);
                lines.Add(new PinLine(plan.ChainPins[place], drives, PinNames.OfChainPin(place), ChainLevel(place)));
            }
        }
        else
        {
            string safe = plan.RelaysActiveLow ? "high" : "low";
            string closed = plan.ClosedIsHigh ? "high" : "low";
            for (int i = 0; i < plan.OutputRoles.Length; i++)
                lines.Add(new PinLine(plan.OutputPlaces[i], true, RoleWords.Name(house, plan.OutputRoles[i]), safe));
            for (int i = 0; i < plan.InputRoles.Length; i++)
                lines.Add(new PinLine(plan.InputPlaces[i], false, RoleWords.Name(house, plan.InputRoles[i]), closed));
        }

        return [.. lines.OrderBy(line => line.Gpio)];
    }

    private static string ChainLevel(int place) => place switch
    {
        BoardPlan.Enable => "low",
        BoardPlan.Strobe => "high",
        BoardPlan.InputData or BoardPlan.ReadBack => "-",
        _ => "low",
    };
}
