using System.Collections;
using System.Reflection;

namespace MutantRunner;

/// <summary>One test of an assembly, with its data.</summary>
internal sealed record Test(string Name, Action Run)
{
    private const BindingFlags Statics = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static;

    /// <summary>All that are not skipped; those that make random cases last, since they take longest.</summary>
    public static IReadOnlyList<Test> All(Assembly tests) =>
    [
        .. from type in tests.GetTypes()
           where type is { IsClass: true, IsAbstract: false }
           from method in type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
           where method.GetCustomAttributes().Any(IsTest)
           orderby IsRandom(type)
           from row in Rows(type, method)
           select new Test($"{type.Name}.{method.Name}", () => Invoke(type, method, row)),
    ];

    /// <summary>The first test that fails, and why; null when none does.</summary>
    public static string? FirstFailure(IEnumerable<Test> tests)
    {
        foreach (Test test in tests)
        {
            try
            {
                test.Run();
            }
            catch (Exception failure)
            {
                return $"{test.Name}: {(failure.InnerException ?? failure).Message.Split('\n')[0]}";
            }
        }

        return null;
    }

    private static bool IsTest(Attribute attribute) =>
        attribute.GetType() is { Name: "FactAttribute" or "TheoryAttribute" } type && type.GetProperty("Skip")?.GetValue(attribute) is null;

    private static bool IsRandom(Type type) => type.Name is "InvariantTests" or "SkippingTests" or "SaveLoadTests" or "LivenessTests";

    private static void Invoke(Type type, MethodInfo method, object?[] row)
    {
        object target = Activator.CreateInstance(type)!;
        object?[] arguments =
            [.. method.GetParameters().Zip(row, (p, value) => p.ParameterType.IsEnum ? Enum.ToObject(p.ParameterType, value!) : value)];
        method.Invoke(target, arguments);
        (target as IDisposable)?.Dispose();
    }

    private static IEnumerable<object?[]> Rows(Type type, MethodInfo method)
    {
        if (method.GetParameters().Length == 0)
            return [[]];
        return method.GetCustomAttributes().SelectMany(attribute => attribute.GetType().Name switch
        {
            "InlineDataAttribute" => [(object?[])Property(attribute, "Data")],
            "MemberDataAttribute" => Member(type, (string)Property(attribute, "MemberName")).Select(Row),
            _ => Enumerable.Empty<object?[]>(),
        });
    }

    private static object Property(object from, string name) => from.GetType().GetProperty(name)!.GetValue(from)!;

    private static IEnumerable<object> Member(Type type, string name) =>
        ((IEnumerable)(type.GetProperty(name, Statics)?.GetValue(null) ?? type.GetField(name, Statics)!.GetValue(null)!)).Cast<object>();

    private static object?[] Row(object row) => row as object?[]
        ?? (object?[])row.GetType().GetInterfaces().First(i => i.Name == "ITheoryDataRow").GetMethod("GetData")!.Invoke(row, null)!;
}
