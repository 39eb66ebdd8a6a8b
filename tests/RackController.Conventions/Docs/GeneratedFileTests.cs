using RackController.Bench;
using RackController.Control;
using RackController.PlanFiles;
using RackController.RackFile;

namespace RackController.Conventions.Docs;

/// <summary>Files that are made of the code are as the code would make them now.</summary>
public sealed class GeneratedFileTests
{
    /// <summary>Set to anything, it has these tests write the files instead of comparing them.</summary>
    private const string WriteVariable = "WRITE_GENERATED_FILES";

    private static readonly Dictionary<string, Func<string>> Sources = new()
    {
        ["config/rack-file.schema.json"] = RackFileSchema.ToJson,
        ["config/orders.schema.json"] = OrdersSchema.ToJson,
        ["config/crops.schema.json"] = CropsSchema.ToJson,
        ["hardware-notes/cause-and-effect.md"] = CauseAndEffectTable.ToMarkdown,
        ["hardware-notes/cause-and-effect-demo-rack.md"] = DemoRackChart,
        ["deploy/rackcontroller.1"] = () => ManualPage.Of(CommandLine.Root()),
    };

    private static string DemoRackChart() =>
        ChartMarkdown.Of(RackChart.AllOf(RackFileReader.Read(Repository.PathOf("config/demo-four-tier.yaml")).Site!));

    public static TheoryData<string> Files => [.. Sources.Keys];

    [Theory]
    [MemberData(nameof(Files))]
    public void AGeneratedFileIsCurrent(string file)
    {
        var current = Sources[file]();
        if (Environment.GetEnvironmentVariable(WriteVariable) is not null)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Repository.PathOf(file))!);
            File.WriteAllText(Repository.PathOf(file), current);
        }

        Assert.True(
            Repository.Has(file) && Repository.Read(file) == current,
            $"{file} is not what the code makes; write it anew: {WriteVariable}=1 dotnet test tests/RackController.Conventions");
    }
}
