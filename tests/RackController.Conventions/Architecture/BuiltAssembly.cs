using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace RackController.Conventions.Architecture;

/// <summary>What a built assembly refers to, read from its metadata without loading it.</summary>
internal sealed class BuiltAssembly
{
    private readonly MetadataReader metadata;

    public BuiltAssembly(string name)
    {
        var image = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, $"{name}.dll"));
        metadata = new PEReader(new MemoryStream(image)).GetMetadataReader();
    }

    /// <summary>The assemblies that its code uses.</summary>
    public IEnumerable<string> References => metadata.AssemblyReferences
        .Select(handle => metadata.GetString(metadata.GetAssemblyReference(handle).Name));

    /// <summary>The types of other assemblies that its code names, as <c>Namespace.Type</c>.</summary>
    public IEnumerable<string> ForeignTypes => metadata.TypeReferences.Select(NameOf);

    /// <summary>The members of other assemblies that its code uses, as <c>Namespace.Type.Member</c>; an accessor by its own
    /// name, such as <c>get_UtcNow</c>.</summary>
    public IEnumerable<string> ForeignMembers => metadata.MemberReferences
        .Select(metadata.GetMemberReference)
        .Where(member => member.Parent.Kind == HandleKind.TypeReference)
        .Select(member => $"{NameOf((TypeReferenceHandle)member.Parent)}.{metadata.GetString(member.Name)}");

    private string NameOf(TypeReferenceHandle handle)
    {
        var type = metadata.GetTypeReference(handle);
        var name = metadata.GetString(type.Name);
        return type.ResolutionScope.Kind == HandleKind.TypeReference
            ? $"{NameOf((TypeReferenceHandle)type.ResolutionScope)}.{name}"
            : $"{metadata.GetString(type.Namespace)}.{name}";
    }
}
