using System.Collections.Immutable;
using System.Reflection.Metadata;

namespace ZoneControl.Logic.Tests;

/// <summary>Types in signatures, as far as a test asks: "float" where a float is in them, "matrix" where an array has several dimensions.</summary>
internal sealed class SignatureTypes : ISignatureTypeProvider<string, object?>
{
    public string GetPrimitiveType(PrimitiveTypeCode typeCode) =>
        typeCode is PrimitiveTypeCode.Single or PrimitiveTypeCode.Double ? "float" : typeCode.ToString();

    public string GetArrayType(string elementType, ArrayShape shape) => $"matrix of {elementType}";

    public string GetByReferenceType(string elementType) => elementType;

    public string GetFunctionPointerType(MethodSignature<string> signature) => "function";

    public string GetGenericInstantiation(string genericType, ImmutableArray<string> typeArguments) => string.Join(' ', typeArguments);

    public string GetGenericMethodParameter(object? genericContext, int index) => "generic";

    public string GetGenericTypeParameter(object? genericContext, int index) => "generic";

    public string GetModifiedType(string modifier, string unmodifiedType, bool isRequired) => unmodifiedType;

    public string GetPinnedType(string elementType) => elementType;

    public string GetPointerType(string elementType) => elementType;

    public string GetSZArrayType(string elementType) => elementType;

    public string GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind) => "type";

    public string GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind) => "type";

    public string GetTypeFromSpecification(MetadataReader reader, object? genericContext, TypeSpecificationHandle handle, byte rawTypeKind) => "type";
}
