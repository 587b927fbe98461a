using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace ZoneControl.Plant.Tests;

/// <summary>
/// A number without a unit is no quantity: whatever the plant shows of numbers says in its documentation what they are counted
/// in, and whatever takes numbers says where they may lie.
/// </summary>
public partial class DocumentationTests
{
    private static readonly Assembly _plant = typeof(PlantModel).Assembly;

    private static readonly XDocument _documentation = XDocument.Load(Path.ChangeExtension(_plant.Location, ".xml"));

    [Fact]
    public void Every_public_number_of_the_plant_states_its_unit()
    {
        IEnumerable<string> silent =
            from member in _plant.GetExportedTypes().SelectMany(Numbers)
            where !Unit().IsMatch(Said(member))
            select $"{member.DeclaringType!.Name}.{member.Name}";

        Assert.False(silent.Any(), string.Join('\n', silent.Order()));
    }

    [Fact]
    public void Every_number_that_describes_a_plant_states_its_range()
    {
        IEnumerable<string> silent =
            from type in _plant.GetExportedTypes()
            where type.Name.EndsWith("Description", StringComparison.Ordinal)
            from member in Numbers(type).OfType<PropertyInfo>()
            where member.SetMethod is not null && !Range().IsMatch(Said(member))
            select $"{type.Name}.{member.Name}";

        Assert.False(silent.Any(), string.Join('\n', silent.Order()));
    }

    [Fact]
    public void Every_formula_of_the_plant_names_its_source()
    {
        IEnumerable<string> silent =
            from type in _plant.GetExportedTypes()
            where type is { IsAbstract: true, IsSealed: true }
            from member in Numbers(type).OfType<MethodInfo>()
            where !Source().IsMatch(Said(member)) && !Source().IsMatch(SaidOf(type))
            select $"{type.Name}.{member.Name}";

        Assert.False(silent.Any(), string.Join('\n', silent.Order()));
    }

    [Fact]
    public void A_number_without_a_unit_would_be_found()
    {
        Assert.DoesNotMatch(Unit(), "The speed of the pump.");
        Assert.Matches(Unit(), "The head of the pump, Pa.");
        Assert.DoesNotMatch(Range(), "The head of the pump, Pa.");
        Assert.Matches(Range(), "The head of the pump, Pa; 1,000 to 500,000.");
        Assert.NotEmpty(Numbers(typeof(PumpDescription)));
    }

    private static IEnumerable<MemberInfo> Numbers(Type type)
    {
        const BindingFlags Own = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        if (type.IsEnum)
            return [];
        return
        [
            .. type.GetProperties(Own).Where(property => IsNumber(property.PropertyType)),
            .. type.GetFields(Own).Where(field => IsNumber(field.FieldType)),
            .. type.GetMethods(Own).Where(method => !method.IsSpecialName && method.Name != "GetHashCode" && IsNumber(method.ReturnType)),
        ];
    }

    private static bool IsNumber(Type type)
    {
        Type of = Nullable.GetUnderlyingType(type) ?? type;
        return of == typeof(double) || of == typeof(long) || of == typeof(IReadOnlyList<double>) || of == typeof(double[]);
    }

    /// <summary>What the documentation says of a member: its own words, and those of a record's parameter.</summary>
    private static string Said(MemberInfo member)
    {
        string type = NameOf(member.DeclaringType!);
        IEnumerable<XElement> entries = _documentation.Descendants("member").Where(entry =>
            Regex.IsMatch((string)entry.Attribute("name")!, $@"^[PFM]:{Regex.Escape(type)}\.{Regex.Escape(member.Name)}(\(|$)"));
        string own = string.Join(' ', entries.SelectMany(entry => entry.Elements()).Where(part => part.Name != "param").Select(Text));
        string ofRecord = string.Join(' ',
            from entry in _documentation.Descendants("member")
            where (string)entry.Attribute("name")! == $"T:{type}"
            from parameter in entry.Elements("param")
            where (string)parameter.Attribute("name")! == member.Name
            select Text(parameter));
        return own + " " + ofRecord;
    }

    private static string SaidOf(Type type) => string.Join(' ',
        from entry in _documentation.Descendants("member")
        where (string)entry.Attribute("name")! == $"T:{NameOf(type)}"
        from part in entry.Elements()
        select Text(part));

    private static string NameOf(Type type) => type.FullName!.Replace('+', '.');

    private static string Text(XElement part) => Regex.Replace(string.Concat(part.DescendantNodesAndSelf().Select(node => node switch
    {
        XText text => text.Value,
        XElement { Name.LocalName: "see" } see => (string?)see.Attribute("cref") ?? "",
        _ => "",
    })), @"\s+", " ");

    // Units as the plant has them inside, and the words for numbers that have none.
    [GeneratedRegex(
        @"(?<![\w/])(m³/s|m³|m²|m/s|kg/m³|Pa·s|Pa|bar|W/K|J/K|W|J|K|°C|ms|s|h|K·h|m|J/\(kg·K\)|W/\(m·K\)|W/\(m²·K\)|W/m²|1/s|kWh|Wh|days|degree-hours|Kv)(?![\w])"
        + "|unit of|share|ratio|factor|[Nn]umber|index|no unit|count|percentage|0 to 1|dimensionless")]
    private static partial Regex Unit();

    [GeneratedRegex(@"IAPWS|IEC|\bEN \d|\bISO\b|\b(1[89]|20)\d\d\b|law\b|[Hh]andbook|by definition|closed form|common practice|[Ff]rom memory")]
    private static partial Regex Source();

    [GeneratedRegex(@"\d to |\d for none to |within|at least|at most|more than|below|above|or more|or less|rising|falling|between|from 0|positive|any|until|null")]
    private static partial Regex Range();
}
