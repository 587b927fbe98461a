using ZoneControl.Bench.Files;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Houses;

/// <summary>A size as the file states it.</summary>
internal readonly record struct TubeSize(double InsideM, string Words);

/// <summary>Reads pipes: mains, branches, and what loops have in common with them.</summary>
internal static class PipeReader
{
    /// <summary>
    /// Roughness where the file gives none, m: drawn tubing (Moody 1944, from memory), used for plastic in public tables too.
    /// </summary>
    public const double DefaultRoughnessM = 1.5e-6;

    public static PipeDescription? Read(TableReader? table)
    {
        if (table is null)
            return null;
        double? length = table.Quantity("length", Dimension.Length, "0 m", "1000 m", required: true);
        TubeSize? size = Size(table, required: true);
        double roughness = Roughness(table) ?? DefaultRoughnessM;
        double fittings = table.Number("fittings_k", 0, 10_000) ?? 0;
        table.End();
        return length is { } l && size is { } s ? new PipeDescription(l, s.InsideM, roughness, fittings) : null;
    }

    public static double? Roughness(TableReader table) => table.Quantity("roughness", Dimension.Length, "0 mm", "1 mm");

    /// <summary>The size by name or by inside diameter.</summary>
    public static TubeSize? Size(TableReader table, bool required)
    {
        bool byName = table.Has("tube");
        bool byDiameter = table.Has("inside");
        double? named = table.Choice("tube", TubeSizes.All);
        double? inside = table.Quantity("inside", Dimension.Length, "4 mm", "200 mm");
        if (byName && byDiameter)
            table.Error("inside", "both \"tube\" and \"inside\"", "one of them");
        else if (required && !byName && !byDiameter)
            table.Missing("inside", "a size: \"inside\" with a diameter or \"tube\" with a trade name such as \"1/2 in\"");
        if (named is { } n)
            return new TubeSize(n, table.Word("tube", "")!);
        return inside is { } i ? new TubeSize(i, table.Word("inside", "")! + " inside") : null;
    }
}

/// <summary>Reads what a valve lets through: a Kv, or the Cv of trades that count in gallons and psi.</summary>
internal static class KvReader
{
    /// <summary>Kv of a valve with Cv 1: the two units by their definitions (IEC 60534-1).</summary>
    private const double KvPerCv = 0.8650;

    public static Setting<double>? Read(TableReader table, string kvKey, string cvKey)
    {
        double? kv = table.Number(kvKey, 0.05, 1000);
        double? cv = table.Number(cvKey, 0.05, 1000);
        if (table.Has(kvKey) && table.Has(cvKey))
            table.Error(cvKey, $"both \"{kvKey}\" and \"{cvKey}\"", "one of them");
        if (kv is { } givenKv)
            return Setting.Given(givenKv, table.PlaceOf(kvKey).Line);
        return cv is { } givenCv ? Setting.Given(givenCv * KvPerCv, table.PlaceOf(cvKey).Line) : null;
    }
}
