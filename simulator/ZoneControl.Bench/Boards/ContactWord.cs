using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Boards;

/// <summary>A contact that comes to the controller, in the words of the terminal list.</summary>
/// <param name="Name">What it is: "thermostat z1, Throwing room".</param>
/// <param name="Meaning">What a closed contact means: "closed: asks".</param>
public sealed record ContactWord(string Name, string Meaning)
{
    /// <summary>Every contact of a house, in the order of its terminals.</summary>
    public static IReadOnlyList<ContactWord> All(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        return [.. PinPlanner.InputRoles(house).Select(role => new ContactWord(RoleWords.Name(house, role), RoleWords.Meaning(house, role)))];
    }
}
