using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Firmware;

/// <summary>From inputs and outputs of a plan to the controller's images and back.</summary>
public static class ImageMap
{
    /// <summary>Fills the input image from contacts as read.</summary>
    public static void Fill(InputImage image, int[] roles, bool[] closed)
    {
        int calls = 0;
        int switches = 0;
        int senses = 0;
        int hands = 0;
        int contacts = 0;
        for (int i = 0; i < roles.Length; i++)
        {
            if (!closed[i])
                continue;
            int bit = 1 << Role.Index(roles[i]);
            switch (Role.Kind(roles[i]))
            {
                case Role.Call:
                    calls |= bit;
                    break;
                case Role.Switch:
                    switches |= bit;
                    break;
                case Role.Sense:
                    senses |= bit;
                    break;
                case Role.Hand:
                    hands |= bit;
                    break;
                default:
                    contacts |= bit;
                    break;
            }
        }

        image.Calls = calls;
        image.EndSwitches = switches;
        image.Senses = senses;
        image.ServiceValves = hands;
        image.Contacts = contacts;
    }

    /// <summary>Says which outputs are to be energised.</summary>
    public static void Fill(bool[] on, int[] roles, OutputImage image)
    {
        for (int i = 0; i < roles.Length; i++)
        {
            switch (Role.Kind(roles[i]))
            {
                case Role.Valve:
                    on[i] = (image.Valves & (1 << Role.Index(roles[i]))) != 0;
                    break;
                case Role.Pump:
                    on[i] = image.Pump;
                    break;
                default:
                    on[i] = image.Heat;
                    break;
            }
        }
    }
}
