using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace ZoneControl.Logic.Tests;

/// <summary>The controller as compiled, read as it stands in the file: nothing of it is loaded.</summary>
internal sealed class LogicAssembly : IDisposable
{
    private readonly PEReader _file;

    /// <summary>Any compiled assembly.</summary>
    public LogicAssembly(string path)
    {
        _file = new PEReader(File.OpenRead(path));
        Reader = _file.GetMetadataReader();
    }

    public MetadataReader Reader { get; }

    public IEnumerable<MethodDefinitionHandle> Methods => Reader.MethodDefinitions;

    /// <summary>As compiled for the board.</summary>
    public static LogicAssembly OfBoard() => new(Path.Combine(AppContext.BaseDirectory, "board", "ZoneControl.Logic.dll"));

    /// <summary>As compiled for the desktop.</summary>
    public static LogicAssembly OfDesktop() => new(typeof(ZoneController).Assembly.Location);

    public void Dispose() => _file.Dispose();

    public string NameOf(MethodDefinitionHandle handle)
    {
        MethodDefinition method = Reader.GetMethodDefinition(handle);
        TypeDefinition type = Reader.GetTypeDefinition(method.GetDeclaringType());
        return $"{Reader.GetString(type.Name)}.{Reader.GetString(method.Name)}";
    }

    public IReadOnlyList<Instruction> Body(MethodDefinitionHandle handle) =>
        Block(handle) is { } block ? Instruction.Read(block.GetILReader()) : [];

    /// <summary>The method's body with its locals and protected regions; null for one without.</summary>
    public MethodBodyBlock? Block(MethodDefinitionHandle handle)
    {
        int address = Reader.GetMethodDefinition(handle).RelativeVirtualAddress;
        return address == 0 ? null : _file.GetMethodBody(address);
    }

    /// <summary>Types of a method's locals, as <see cref="SignatureTypes"/> names them.</summary>
    public IEnumerable<string> Locals(MethodDefinitionHandle handle)
    {
        if (Block(handle) is not { LocalSignature.IsNil: false } block)
            return [];
        return Reader.GetStandaloneSignature(block.LocalSignature).DecodeLocalSignature(new SignatureTypes(), null);
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
