using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads manifolds.</summary>
internal static class ManifoldReader
{
    public static HouseManifold? Read(TableReader table, NameTable names)
    {
        string? name = names.Add(table);
        string? label = table.Text("label", 40);
        bool hasBranch = table.Has("branch");
        var branch = PipeReader.Read(table.Table("branch"));
        double? balancing = KvReader.Read(table, "balancing_kv", "balancing_cv")?.Value;
        table.End();
        return name is null || (hasBranch && branch is null)
            ? null
            : new HouseManifold(name, label ?? name, branch) { BalancingKv = balancing };
    }
}
