using System.Reflection;
using System.Reflection.Emit;

namespace MutantRunner;

/// <summary>The mutants in an assembly: each hides behind a call that asks whether it is the active one.</summary>
internal sealed class Mutants(Assembly mutated)
{
    private const BindingFlags All =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    private readonly Type _control = mutated.GetTypes().Single(type => type.Name == "MutantControl");

    public void Activate(int mutant) => _control.GetField("ActiveMutant", All)!.SetValue(null, mutant);

    /// <summary>Those that are compiled in.</summary>
    public IReadOnlyCollection<int> Numbers()
    {
        int isActive = _control.GetMethod("IsActive", All)!.MetadataToken;
        var numbers = new SortedSet<int>();
        foreach (MethodBase method in mutated.GetTypes().SelectMany(type => type.GetMethods(All).Concat<MethodBase>(type.GetConstructors(All))))
        {
            byte[] il = method.GetMethodBody()?.GetILAsByteArray() ?? [];
            for (int i = 2; i + 4 < il.Length; i++)
            {
                if (il[i] == OpCodes.Call.Value && BitConverter.ToInt32(il, i + 1) == isActive)
                    numbers.Add(ConstantBefore(il, i));
            }
        }

        return numbers;
    }

    private static int ConstantBefore(byte[] il, int at)
    {
        if (at >= 5 && il[at - 5] == OpCodes.Ldc_I4.Value)
            return BitConverter.ToInt32(il, at - 4);
        return il[at - 2] == OpCodes.Ldc_I4_S.Value ? il[at - 1] : il[at - 1] - OpCodes.Ldc_I4_0.Value;
    }
}
