using System.Collections.Immutable;
using System.Reflection;
using System.Reflection.Metadata;
using ZoneControl.Logic.Tests;

namespace ZoneControl.Firmware.Tests;

/// <summary>Members with their whole signatures, as text that is alike wherever a type comes from.</summary>
internal sealed class FullSignatures(MetadataReader reader) : ISignatureTypeProvider<string, object?>
{
    /// <summary>Every method and field that an assembly uses of others, each with the assembly's name.</summary>
    public static IEnumerable<(string Assembly, string Member)> Used(LogicAssembly assembly)
    {
        MetadataReader reader = assembly.Reader;
        var names = new FullSignatures(reader);
        foreach (MemberReferenceHandle handle in reader.MemberReferences)
        {
            MemberReference member = reader.GetMemberReference(handle);
            if (member.Parent.Kind != HandleKind.TypeReference)
                throw new NotSupportedException($"a member of a {member.Parent.Kind}");
            TypeReference type = reader.GetTypeReference((TypeReferenceHandle)member.Parent);
            string name = reader.GetString(member.Name);
            string signature = member.GetKind() == MemberReferenceKind.Field
                ? $"{member.DecodeFieldSignature(names, null)} {names.NameOf(type)}.{name}"
                : Text(names.NameOf(type), name, member.DecodeMethodSignature(names, null));
            yield return (reader.GetString(reader.GetAssemblyReference(Outermost(reader, type)).Name), signature);
        }
    }

    /// <summary>Every method and field that an assembly has.</summary>
    public static IEnumerable<string> Had(LogicAssembly assembly, Func<TypeDefinition, bool>? which = null, bool publicOnly = false)
    {
        MetadataReader reader = assembly.Reader;
        var names = new FullSignatures(reader);
        foreach (TypeDefinition type in reader.TypeDefinitions.Select(reader.GetTypeDefinition).Where(which ?? (_ => true)))
        {
            string owner = GetTypeFromDefinition(reader, type);
            foreach (MethodDefinition method in type.GetMethods().Select(reader.GetMethodDefinition))
            {
                if (!publicOnly || (method.Attributes & MethodAttributes.MemberAccessMask) == MethodAttributes.Public)
                    yield return Text(owner, reader.GetString(method.Name), method.DecodeSignature(names, null));
            }

            foreach (FieldDefinition field in type.GetFields().Select(reader.GetFieldDefinition))
            {
                if (!publicOnly || (field.Attributes & FieldAttributes.FieldAccessMask) == FieldAttributes.Public)
                    yield return $"{field.DecodeSignature(names, null)} {owner}.{reader.GetString(field.Name)}";
            }
        }
    }

    public string GetPrimitiveType(PrimitiveTypeCode typeCode) => typeCode.ToString();

    public string GetArrayType(string elementType, ArrayShape shape) => $"{elementType}[{new string(',', shape.Rank - 1)}]";

    public string GetByReferenceType(string elementType) => elementType + "&";

    public string GetFunctionPointerType(MethodSignature<string> signature) => "function";

    public string GetGenericInstantiation(string genericType, ImmutableArray<string> typeArguments) =>
        $"{genericType}<{string.Join(',', typeArguments)}>";

    public string GetGenericMethodParameter(object? genericContext, int index) => $"!!{index}";

    public string GetGenericTypeParameter(object? genericContext, int index) => $"!{index}";

    public string GetModifiedType(string modifier, string unmodifiedType, bool isRequired) => unmodifiedType;

    public string GetPinnedType(string elementType) => elementType;

    public string GetPointerType(string elementType) => elementType + "*";

    public string GetSZArrayType(string elementType) => elementType + "[]";

    public string GetTypeFromDefinition(MetadataReader metadata, TypeDefinitionHandle handle, byte rawTypeKind) =>
        GetTypeFromDefinition(metadata, metadata.GetTypeDefinition(handle));

    public string GetTypeFromReference(MetadataReader metadata, TypeReferenceHandle handle, byte rawTypeKind) =>
        NameOf(metadata.GetTypeReference(handle));

    public string GetTypeFromSpecification(MetadataReader metadata, object? genericContext, TypeSpecificationHandle handle, byte rawTypeKind) => "spec";

    private static string GetTypeFromDefinition(MetadataReader metadata, TypeDefinition type) =>
        $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}".TrimStart('.');

    private static string Text(string type, string name, MethodSignature<string> signature) =>
        $"{signature.ReturnType} {type}.{name}({string.Join(", ", signature.ParameterTypes)})";

    private static AssemblyReferenceHandle Outermost(MetadataReader reader, TypeReference type)
    {
        while (type.ResolutionScope.Kind == HandleKind.TypeReference)
            type = reader.GetTypeReference((TypeReferenceHandle)type.ResolutionScope);
        return (AssemblyReferenceHandle)type.ResolutionScope;
    }

    private string NameOf(TypeReference type) => $"{reader.GetString(type.Namespace)}.{reader.GetString(type.Name)}".TrimStart('.');
}
