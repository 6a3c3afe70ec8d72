using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using Xunit;

namespace StarterCtl.House;

/// <summary>The board's build of the library under test is really there, and needs nothing that the board has not.</summary>
public sealed class BoardBuildTests
{
    [Fact]
    public void BoardBuild_ThisConfiguration_IsThereAndReferencesTheBoardsRuntimeOnly()
    {
        string path = Repository.BoardLibrary(Tested.Folder, Tested.Library);
        Assert.True(File.Exists(path), path);

        using PEReader library = new(File.OpenRead(path));
        MetadataReader metadata = library.GetMetadataReader();
        List<string> references = metadata.AssemblyReferences
            .Select(handle => metadata.GetString(metadata.GetAssemblyReference(handle).Name)).ToList();

        Assert.Equal(Tested.References, references.Order());
        Assert.Contains(Tested.MainType, metadata.TypeDefinitions.Select(handle => metadata.GetString(metadata.GetTypeDefinition(handle).Name)));
    }
}
