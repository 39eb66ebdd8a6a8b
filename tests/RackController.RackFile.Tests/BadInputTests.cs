using System.Text;

namespace RackController.RackFile.Tests;

public sealed class BadInputTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("rack-file-");

    public void Dispose() => folder.Delete(recursive: true);

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    [InlineData("# only a comment\n")]
    [InlineData("---\n")]
    public void AnEmptyFileIsSaidToBeEmpty(string text) => Expect.Complaint(text, "rack.yaml:1:1: the file is empty: ");

    [Fact]
    public void AFileOfPlainWordsHoldsNoKeys() => Expect.Complaint("just some words", "1:1: the file holds no keys: ");

    [Fact]
    public void ABinaryFileIsNoText() =>
        AnswersForBytes([0x7F, (byte)'E', (byte)'L', (byte)'F', 0, 1, 2, 0xFF], ":1:1: the file is not UTF-8 text: ",
            couldBeRead: true);

    [Fact]
    public void ATextInAnotherEncodingIsNoText() =>
        AnswersForBytes(Encoding.Unicode.GetBytes("site: x"), "the file is not UTF-8 text", couldBeRead: true);

    [Fact]
    public void AByteOrderMarkDoesNoHarm()
    {
        var path = Path.Combine(folder.FullName, "marked.yaml");
        File.WriteAllText(path, RackFiles.Small, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));

        Assert.Empty(RackFileReader.Read(path).Complaints);
    }

    [Fact]
    public void AFileOfFiftyMegabytesIsRefusedWithoutBeingParsed()
    {
        var path = Path.Combine(folder.FullName, "large.yaml");
        using (var stream = File.Create(path))
        {
            stream.SetLength(50_000_000);
        }

        Answers(path, "the file is larger than 1 MiB", couldBeRead: true);
    }

    [Fact]
    public void AMissingFileCouldNotBeRead() =>
        Answers(Path.Combine(folder.FullName, "no.yaml"), "no.yaml:1:1: there is no such file: check the path",
            couldBeRead: false);

    [Fact]
    public void ADirectoryCouldNotBeRead() => Answers(folder.FullName, "this is a directory", couldBeRead: false);

    [Fact]
    public void APathThatCannotBeAPathCouldNotBeRead() => Answers("a\0b", "could not be read", couldBeRead: false);

    [Fact]
    public void AFileThatMayNotBeReadIsSaidToBeSo()
    {
        if (OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess)
        {
            // Permissions do not bind the superuser; the next best refusal of the same kind is a path through a file.
            var file = Path.Combine(folder.FullName, "file");
            File.WriteAllText(file, "");
            Answers(Path.Combine(file, "below.yaml"), ":1:1: ", couldBeRead: false);
            return;
        }

        var path = Path.Combine(folder.FullName, "locked.yaml");
        File.WriteAllText(path, RackFiles.Small);
        File.SetUnixFileMode(path, UnixFileMode.None);
        Answers(path, "may not be read by this user", couldBeRead: false);
    }

    [Fact]
    public void AnAliasBombIsRefusedAtItsFirstAnchor() => Expect.Complaint(
        """
        a: &a [x, x, x, x, x, x, x, x, x]
        b: &b [*a, *a, *a, *a, *a, *a, *a, *a, *a]
        c: [*b, *b, *b, *b, *b, *b, *b, *b, *b]
        """,
        "rack.yaml:1:4: an anchor or alias");

    [Fact]
    public void BracketsWithoutEndAreRefused() =>
        Expect.Complaint("site: " + new string('[', 100_000), "1:23: nested more than 16 deep");

    [Fact]
    public void MoreValuesThanAnySiteNeedsAreRefused() =>
        Expect.Complaint("racks: [" + string.Concat(Enumerable.Repeat("1, ", 60_000)) + "1]", "more than 50000 values");

    [Fact]
    public void ATagThatIsNoAddressIsRefusedToo() => Expect.Complaint("site: x\nzone: !!n[", "this is not YAML from here on");

    [Fact]
    public void ATagIsRefused() => Expect.Complaint("site: !!str north", "1:7: a tag");

    [Fact]
    public void ATabInTheIndentationIsShown() =>
        Expect.Complaint("site: x\nracks:\n\t- name: y\n", "rack.yaml:3:1: a tab in the indentation: ");

    [Fact]
    public void ATabBeforeACommentDoesNoHarm() => Expect.Complaints("\t# note\n" + RackFiles.Small);

    [Fact]
    public void TextThatIsNoYamlSaysWhere() =>
        Expect.Complaint("site: x\nzone: [a, b\nracks: y\n", "rack.yaml:2:8: this is not YAML");

    [Fact]
    public void TwoDocumentsAreOneTooMany() =>
        Expect.Complaint("site: x\n---\nsite: y\n", "rack.yaml:2:1: a second document begins here");

    [Fact]
    public void AScenarioInThePlaceOfARackFileIsNamed() => Expect.Complaint(
        "about: a week\nrack-file: demo.yaml\nstart: 2026-03-02 00:00\n", "this is a scenario, and a rack file belongs here");

    [Fact]
    public void ComplaintsEndAfterAHundred()
    {
        var text = string.Concat(Enumerable.Range(0, 500).Select(number => $"nothing{number}: 1\n"));

        var complaints = RackFileReader.Parse(text, "rack.yaml").Complaints;

        Assert.Equal(101, complaints.Length);
        Assert.Contains("more complaints", complaints[^1].What, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatWasWrittenCannotDisturbTheTerminal() =>
        Expect.Complaint(RackFiles.SmallWith("io: simulated", "\"\\e[31mred\": 1"), "`?[31mred`");

    private void AnswersForBytes(byte[] bytes, string expected, bool couldBeRead)
    {
        var path = Path.Combine(folder.FullName, "bytes.yaml");
        File.WriteAllBytes(path, bytes);
        Answers(path, expected, couldBeRead);
    }

    private static void Answers(string path, string expected, bool couldBeRead)
    {
        var result = RackFileReader.Read(path);

        var complaint = Assert.Single(result.Complaints).ToString();
        Assert.Contains(expected, complaint, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', complaint);
        Assert.Null(result.Site);
        Assert.Equal(couldBeRead, result.CouldBeRead);
    }
}
