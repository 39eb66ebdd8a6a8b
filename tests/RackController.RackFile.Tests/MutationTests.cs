using CsCheck;

namespace RackController.RackFile.Tests;

/// <summary>Whatever happens to a file, the reader answers with a site or with a complaint, and never with an
/// exception.</summary>
public sealed class MutationTests
{
    private static readonly string[] Splices =
    [
        ":", "- ", "{", "}", "[", "]", "\"", "'", "&a", "*a", "!t", "\n", "\n  ", "\t", "#", "|", ">", "%", "?", ",", " ", "0",
            "-1", "1e9",
        "45 kg", "99999999999999999999", "°", "\u0000", "\u2028", "no", "~", "---\n", "...\n", "@", "`",
    ];

    private static readonly Gen<Func<string, string>> Mutation = Gen.Select(
        Gen.Int[0, 4], Gen.Double[0, 1], Gen.Int[0, 40], Gen.Int[0, Splices.Length - 1].Select(index => Splices[index]),
        (what, at, length, splice) =>
            (Func<string, string>)(text => Mutate(text, what, (int)(at * text.Length), length, splice)));

    [Theory]
    [InlineData("demo-first-rack.yaml")]
    [InlineData("demo-three-racks.yaml")]
    public void AMutatedFileIsReadOrComplainedOf(string name)
    {
        var original = File.ReadAllText(Files.Config(name));

        Mutation.Array[1, 4].Sample(
            mutations =>
            {
                var result = RackFileReader.Parse(mutations.Aggregate(original, (text, mutate) => mutate(text)), "mutated.yaml");
                return result.Site is null
                    ? result.Complaints.Any(complaint => complaint.Severity == Severity.Error)
                    : result.Complaints.All(complaint => complaint.Severity == Severity.Warning);
            },
            iter: 400);
    }

    private static string Mutate(string text, int what, int at, int length, string splice)
    {
        var end = Math.Min(text.Length, at + length);
        return what switch
        {
            0 => text.Remove(at, end - at),
            1 => text.Insert(at, splice),
            2 => text.Insert(at, text[at..end]),
            3 => text[..at] + splice + text[end..],
            _ => text[..at],
        };
    }
}
