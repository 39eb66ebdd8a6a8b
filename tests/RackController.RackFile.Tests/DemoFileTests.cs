namespace RackController.RackFile.Tests;

public sealed class DemoFileTests
{
    [Theory]
    [InlineData("demo-first-rack.yaml")]
    [InlineData("demo-four-tier.yaml")]
    [InlineData("demo-three-racks.yaml")]
    public void ADemoFileLoadsWithoutAnyComplaint(string name)
    {
        var result = RackFileReader.Read(Files.Config(name));

        Assert.Equal([], result.Complaints.Select(complaint => complaint.ToString()));
        Assert.NotNull(result.Site);
    }
}
