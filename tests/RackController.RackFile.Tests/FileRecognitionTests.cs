namespace RackController.RackFile.Tests;

public sealed class FileRecognitionTests
{
    [Theory]
    [InlineData("demo-first-rack.yaml", PlainFile.Rack)]
    [InlineData("scenarios/first-week.yaml", PlainFile.Scenario)]
    [InlineData("demo-orders.yaml", PlainFile.Orders)]
    [InlineData("crops.yaml", PlainFile.Crops)]
    [InlineData("rack-file.schema.json", null)]
    [InlineData("nowhere.yaml", null)]
    public void AShippedFileIsKnownByItsKeys(string name, PlainFile? kind) =>
        Assert.Equal(kind, FileRecognition.KindOf(Files.Config(name)));

    [Fact]
    public void CropsInThePlaceOfARackFileAreNamedAndNotPickedToPieces() => Assert.Equal(
        "this is a crops file, and a rack file belongs here",
        Assert.Single(RackFileReader.Read(Files.Config("crops.yaml")).Complaints).What);
}
