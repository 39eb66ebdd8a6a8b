using CsCheck;
using RackController.Service;

namespace RackController.Page.Tests;

public sealed class PeopleTests : IDisposable
{
    private const string Whole =
        """{"people":[{"name":"ada","role":"Configure","passwordKey":"x","tokens":[],"""
        + """ "password":{"iterations":600000,"salt":"AQ==","hash":"AQ=="}}]}""";

    private static readonly PasswordHash quick = new(1, [1], [2]);
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("rackcontroller-people-");
    private readonly People people;

    public PeopleTests() => people = new People(State);

    private StateFolder State => new(folder.FullName);

    private string FilePath => Path.Combine(folder.FullName, "people.json");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void WhoIsAddedIsThereForAnotherProcessToo()
    {
        Assert.True(people.AreNone);
        Assert.Null(people.Add("ada", Role.Configure, quick));

        var other = new People(State);
        Assert.Equal(Role.Configure, other.Find("ADA")?.Role);
        Assert.False(other.AreNone);
    }

    [Fact]
    public void NobodyElseReadsTheFile()
    {
        Assert.Null(people.Add("ada", Role.Configure, quick));

        Assert.True(OwnerOnly.Reads(FilePath));
    }

    [Fact]
    public void TheFirstMustBeAbleToLetOthersIn() => Assert.NotNull(people.Add("cleo", Role.View, quick));

    [Fact]
    public void TwoNamesDifferByMoreThanCase()
    {
        Assert.Null(people.Add("ada", Role.Configure, quick));

        Assert.Contains("is there already", people.Add("Ada", Role.View, quick), StringComparison.Ordinal);
    }

    [Fact]
    public void TheLastWhoMayConfigureStays()
    {
        Assert.Null(people.Add("ada", Role.Configure, quick));
        Assert.Null(people.Add("ben", Role.Operate, quick));

        Assert.NotNull(people.Remove("ada", mayBeLast: true));
        Assert.NotNull(people.SetRole("ada", Role.View));
        Assert.Null(people.Remove("ben", mayBeLast: false));
        Assert.NotNull(people.Remove("ada", mayBeLast: false));
        Assert.Null(people.Remove("ada", mayBeLast: true));
        Assert.True(people.AreNone);
    }

    [Fact]
    public void WhatTheDamagedOnesAreMadeOfIsWhole()
    {
        File.WriteAllText(FilePath, Whole);

        Assert.Equal("ada", Assert.Single(people.All).Name);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("""{"people":null}""")]
    [InlineData("""{"people":[{}]}""")]
    [InlineData("""{"people":[{"name":"ada","role":"Configure","password":null,"passwordKey":"x","tokens":[]}]}""")]
    [InlineData(Whole, "\"Configure\"", "9")]
    [InlineData(Whole, "ada", "")]
    [InlineData(Whole, "600000", "2000000000")]
    [InlineData(Whole, "\"AQ==\"", "\"\"")]
    [InlineData("""{"people":[],"peopel":[]}""")]
    public void ADamagedFileIsNotTakenForNone(string whole, string part = "", string damaged = "")
    {
        var text = part.Length > 0 ? whole.Replace(part, damaged, StringComparison.Ordinal) : whole;
        File.WriteAllText(FilePath, text);

        Assert.False(people.AreNone);
        Assert.Empty(people.All);
        Assert.Contains("people.json cannot be read", people.Fault, StringComparison.Ordinal);
        Assert.NotNull(people.Add("ada", Role.Configure, quick));
        Assert.Equal(text, File.ReadAllText(FilePath));
    }

    [Fact]
    public void ARenewedHashKeepsSessionsAndAnotherPasswordEndsThem()
    {
        Assert.Null(people.Add("ada", Role.Configure, quick));
        var key = people.Find("ada")!.PasswordKey;

        Assert.Null(people.Renew(people.Find("ada")!, quick with { Iterations = 2 }));
        Assert.Equal((key, 2), (people.Find("ada")!.PasswordKey, people.Find("ada")!.Password.Iterations));
        Assert.Null(people.SetPassword("ada", quick));
        Assert.NotEqual(key, people.Find("ada")!.PasswordKey);
    }

    [Fact]
    public async Task TwoWhoChangeItAtOnceLoseNothing()
    {
        Assert.Null(people.Add("ada", Role.Configure, quick));
        var names = Enumerable.Range(0, 12).Select(i => $"person {i}").ToList();

        await Task.WhenAll(names.Select(name => Task.Run(() => Assert.Null(new People(State).Add(name, Role.View, quick)))));

        Assert.Equal(names.Append("ada").Order(), new People(State).All.Select(person => person.Name).Order());
    }

    [Fact]
    public void WhateverIsAskedSomebodyCanConfigureOrNobodyIsThere()
    {
        string[] names = ["ada", "ben", "cleo"];
        var name = Gen.Int[0, names.Length - 1].Select(i => names[i]);
        var step = Gen.OneOf(
            Gen.Select(name, Gen.Enum<Role>(), (who, role) => (Action<People>)(all => all.Add(who, role, quick))),
            Gen.Select(name, Gen.Enum<Role>(), (who, role) => (Action<People>)(all => all.SetRole(who, role))),
            Gen.Select(name, Gen.Bool, (who, last) => (Action<People>)(all => all.Remove(who, last))));
        step.Array[0, 8].Sample(
            steps =>
            {
                File.Delete(FilePath);
                var all = new People(State);
                foreach (var act in steps)
                {
                    act(all);
                    Assert.True(all.All.IsEmpty || all.All.Any(person => person.Role == Role.Configure));
                }
            },
            iter: 40, threads: 1);
    }
}
