using System.Text.RegularExpressions;
using RackController.Model;

namespace RackController.RackFile.Tests;

/// <summary>What reading a text comes to.</summary>
internal static partial class Expect
{
    /// <summary>The site of a text without errors.</summary>
    public static Site Site(string text)
    {
        var result = RackFileReader.Parse(text, "rack.yaml");
        Assert.DoesNotContain(result.Complaints, complaint => complaint.Severity == Severity.Error);
        return Assert.IsType<Site>(result.Site);
    }

    /// <summary>The text draws exactly these complaints, and is refused when one of them is an error.</summary>
    public static void Complaints(string text, params string[] complaints)
    {
        var result = RackFileReader.Parse(text, "rack.yaml");
        Assert.Equal(complaints, result.Complaints.Select(complaint => complaint.ToString()));
        Assert.Equal(result.Complaints.Any(complaint => complaint.Severity == Severity.Error), result.Site is null);
    }

    /// <summary>Among the complaints that the text draws is one that says all of these things.</summary>
    public static void Among(string text, params string[] parts) => Assert.Contains(
        RackFileReader.Parse(text, "rack.yaml").Complaints.Select(complaint => complaint.ToString()),
        complaint => parts.All(part => complaint.Contains(part, StringComparison.Ordinal)));

    /// <summary>The text draws one complaint that says all of these things.</summary>
    public static void Complaint(string text, params string[] parts)
    {
        var single = Assert.Single(RackFileReader.Parse(text, "rack.yaml").Complaints);
        Assert.DoesNotContain(": ", Quoted().Replace(single.What, ""), StringComparison.Ordinal);
        var complaint = single.ToString();
        Assert.All(parts, part => Assert.Contains(part, complaint, StringComparison.Ordinal));
    }

    /// <summary>What the person wrote. Outside of it a colon parts place, mistake and cure, and nothing else.</summary>
    [GeneratedRegex("`[^`]*`")]
    private static partial Regex Quoted();
}
