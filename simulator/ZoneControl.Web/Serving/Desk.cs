using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Web.Live;
using ZoneControl.Web.View;

namespace ZoneControl.Web.Serving;

/// <summary>What one browser session keeps while its owner goes from page to page.</summary>
public sealed class Desk(FileShelf shelf)
{
    private const string FirstHouse = "pottery.house.toml";
    private const string FirstScript = "pottery-first-cold-morning.script.toml";

    private LiveBench? _bench;
    private UnitSystem? _units;

    /// <summary>The bench; the demo's house and script until something else is opened.</summary>
    public LiveBench Bench => _bench ??= First();

    /// <summary>Units to show: those chosen, else those of the house.</summary>
    public UnitSystem Units => _units ?? UnitsOf(Bench.House);

    /// <summary>Units to show for another house than the bench's.</summary>
    public UnitSystem UnitsFor(House house) => _units ?? UnitsOf(house);

    /// <summary>Text in the house's editor, kept between visits; null before the first.</summary>
    public string? HouseText { get; set; }

    /// <summary>Text in the script's editor, kept between visits; null before the first.</summary>
    public string? ScriptText { get; set; }

    /// <summary>Puts another house on the bench.</summary>
    public void Open(House house, Script? script, bool beside) => _bench = new LiveBench(house, script, beside);

    /// <summary>Puts a bench of its own making in place of this one.</summary>
    public void Open(LiveBench bench) => _bench = bench;

    /// <summary>Chooses units; null for those of the house.</summary>
    public void Choose(UnitSystem? units) => _units = units;

    /// <summary>The units in which a house's owner reads results.</summary>
    public static UnitSystem UnitsOf(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        return house.Units == DisplayUnits.Us ? UnitSystem.UsCustomary : UnitSystem.Metric;
    }

    private LiveBench First()
    {
        ShelfFile file = shelf.Houses.FirstOrDefault(f => f.Name == FirstHouse)
            ?? throw new InvalidOperationException($"{FirstHouse} is missing from the program's folder.");
        House house = shelf.ReadHouse(file).House
            ?? throw new InvalidOperationException($"{FirstHouse} cannot be read.");
        ShelfFile? script = shelf.Scripts.FirstOrDefault(f => f.Name == FirstScript);
        return new LiveBench(house, script is null ? null : shelf.ReadScript(script, house).Script);
    }
}
