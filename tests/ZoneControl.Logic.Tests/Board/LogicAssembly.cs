using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace ZoneControl.Logic.Tests;

/// <summary>The controller as compiled for the board, read as it stands in the file: nothing of it is loaded.</summary>
internal sealed class BoardAssembly : IDisposable
{
    private readonly PEReader _file = new(File.OpenRead(Path.Combine(AppContext.BaseDirectory, "board", "ZoneControl.Logic.dll")));

    public BoardAssembly() => Reader = _file.GetMetadataReader();

    public MetadataReader Reader { get; }

    public IEnumerable<MethodDefinitionHandle> Methods => Reader.MethodDefinitions;

    public void Dispose() => _file.Dispose();

    public string NameOf(MethodDefinitionHandle handle)
    {
        MethodDefinition method = Reader.GetMethodDefinition(handle);
        TypeDefinition type = Reader.GetTypeDefinition(method.GetDeclaringType());
        return $"{Reader.GetString(type.Name)}.{Reader.GetString(method.Name)}";
    }

    public IReadOnlyList<Instruction> Body(MethodDefinitionHandle handle)
    {
        int address = Reader.GetMethodDefinition(handle).RelativeVirtualAddress;
        return address == 0 ? [] : Instruction.Read(_file.GetMethodBody(address).GetILReader());
    }

    /// <summary>The methods of this assembly that a method calls, itself included, however indirectly.</summary>
    public HashSet<MethodDefinitionHandle> ReachableFrom(string name)
    {
        var reached = new HashSet<MethodDefinitionHandle>();
        var open = new Stack<MethodDefinitionHandle>(Methods.Where(m => NameOf(m) == name));
        while (open.TryPop(out MethodDefinitionHandle method))
        {
            if (!reached.Add(method))
                continue;
            foreach (Instruction instruction in Body(method))
            {
                if (instruction.Token is { } token && MetadataTokens.EntityHandle(token) is { Kind: HandleKind.MethodDefinition } called)
                    open.Push((MethodDefinitionHandle)called);
            }
        }

        return reached;
    }

    /// <summary>Names of the core library's methods and fields that a method uses.</summary>
    public IEnumerable<string> OutsideUses(MethodDefinitionHandle method) =>
        from instruction in Body(method)
        where instruction.Token is { } token && MetadataTokens.EntityHandle(token).Kind == HandleKind.MemberReference
        let member = Reader.GetMemberReference((MemberReferenceHandle)MetadataTokens.EntityHandle(instruction.Token!.Value))
        select Reader.GetString(member.Name);
}
