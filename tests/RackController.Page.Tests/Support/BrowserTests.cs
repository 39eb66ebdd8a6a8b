namespace RackController.Page.Tests;

/// <summary>The tests that share the browser.</summary>
[CollectionDefinition(Name)]
public sealed class BrowserTests : ICollectionFixture<Chromium>
{
    public const string Name = "browser";
}
