using ZoneControl.Bench.Files;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads loops, with what [every_loop] says for all of them.</summary>
internal sealed class LoopReader
{
    /// <summary>Bends of a loop where the file gives none, as a loss coefficient K (common practice: some twenty easy bends).</summary>
    public const double DefaultBendsK = 25;

    /// <summary>Kv of a manifold valve where the file gives none, m³/h at 1 bar (common practice).</summary>
    public const double DefaultValveKvs = 1.2;

    private readonly NameTable _manifolds;
    private readonly TableReader? _every;
    private readonly int? _manifold;
    private readonly TubeSize? _size;
    private readonly double? _roughness;
    private readonly double? _bends;
    private readonly Setting<double>? _kvs;
    private readonly double? _balancing;

    public LoopReader(TableReader? every, NameTable manifolds)
    {
        _manifolds = manifolds;
        _every = every;
        if (every is null)
            return;
        _manifold = manifolds.Find(every, "manifold");
        _size = PipeReader.Size(every, required: false);
        _roughness = PipeReader.Roughness(every);
        _bends = Bends(every);
        _kvs = KvReader.Read(every, "valve_kvs", "valve_cv");
        _balancing = KvReader.Read(every, "balancing_kv", "balancing_cv")?.Value;
        every.End();
    }

    public HouseLoop? Read(TableReader table)
    {
        string label = table.Text("label", 40) ?? "";
        int? manifold = _manifolds.Find(table, "manifold") ?? (table.Has("manifold") ? null : OnlyManifold(table));
        double? length = table.Quantity("length", Dimension.Length, "1 m", "1000 m", required: true);
        bool sizeElsewhere = _every is not null && (_every.Has("tube") || _every.Has("inside"));
        TubeSize? size = PipeReader.Size(table, required: !sizeElsewhere)
            ?? (table.Has("tube") || table.Has("inside") ? null : _size);
        double roughness = PipeReader.Roughness(table) ?? _roughness ?? PipeReader.DefaultRoughnessM;
        double bends = Bends(table) ?? _bends ?? DefaultBendsK;
        Setting<double> kvs = KvReader.Read(table, "valve_kvs", "valve_cv") ?? _kvs
            ?? Setting.Derived(DefaultValveKvs, "common practice for manifold valves");
        double? balancing = KvReader.Read(table, "balancing_kv", "balancing_cv")?.Value ?? _balancing;
        table.End();
        return manifold is { } m && length is { } l && size is { } s
            ? new HouseLoop(m, new PipeDescription(l, s.InsideM, roughness, bends), s.Words, kvs, label) { BalancingKv = balancing }
            : null;
    }

    private static double? Bends(TableReader table) => table.Number("bends_k", 0, 1000);

    /// <summary>The manifold of a loop that names none: that of [every_loop], or the only one there is.</summary>
    private int? OnlyManifold(TableReader table)
    {
        if (_every is not null && _every.Has("manifold"))
            return _manifold;
        if (_manifolds.Count == 1)
        {
            _manifolds.Use(0);
            return 0;
        }

        if (_manifolds.Count > 1)
            table.Missing("manifold", "the name of a manifold, since there are several");
        return null;
    }
}
