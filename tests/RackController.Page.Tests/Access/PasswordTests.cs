using System.Security.Cryptography;
using System.Text;

namespace RackController.Page.Tests;

public sealed class PasswordTests
{
    // RFC 7914, section 11: test vectors of PBKDF2-HMAC-SHA-256; the first 32 of 64 bytes.
    [Theory]
    [InlineData("passwd", "salt", 1, "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc")]
    [InlineData("Password", "NaCl", 80000, "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56")]
    public void AHashIsThatOfThePublishedFunction(string password, string salt, int iterations, string expected)
    {
        var hash = new PasswordHash(iterations, Encoding.UTF8.GetBytes(salt), Convert.FromHexString(expected));

        Assert.True(hash.Fits(password));
        Assert.False(hash.Fits(password + " "));
        Assert.True(hash.IsOld);
    }

    [Fact]
    public void TwoOfOnePasswordDiffer()
    {
        var (one, other) = (PasswordHash.Of("four damp wool socks"), PasswordHash.Of("four damp wool socks"));

        Assert.NotEqual(one.Hash, other.Hash);
        Assert.True(other.Fits("four damp wool socks"));
        Assert.False(one.IsOld);
    }

    // NIST SP 800-63B, from memory: no composition rules, any character, none of the commonest, none out of the context.
    [Theory]
    [InlineData("four damp wool socks")]
    [InlineData("aaaaabbbbbccccc")]
    [InlineData("\u0443\u043a\u0440\u043e\u043f \u0432 \u043f\u043e\u0433\u0440\u0435\u0431\u0435")]
    [InlineData("\U0001F331\U0001F4A7\U0001F331\U0001F4A7\U0001F331\U0001F4A7\U0001F331\U0001F4A7\U0001F331\u2600")]
    public void AnyLongOneIsTaken(string password) => Assert.Null(PasswordRules.Complaint(password, "ada", "Millbrook cellar"));

    [Theory]
    [InlineData("nine char", "has 9 characters")]
    [InlineData("", "has 0 characters")]
    [InlineData("x", "has 1 character:")]
    [InlineData("Password123", "among the first")]
    [InlineData("aaaaaaaaaaaa", "among the first")]
    [InlineData("Millbrook Cellar1", "little more than a name")]
    [InlineData("Theodora Lovelace!", "little more than a name")]
    public void AWeakOneIsRefusedInOneLine(string password, string why) =>
        Assert.Contains(why, PasswordRules.Complaint(password, "theodora lovelace", "Millbrook cellar"), StringComparison.Ordinal);

    [Fact]
    public void TheLongestIsTakenAndNoLonger()
    {
        var longest = string.Concat(Enumerable.Range(0, PasswordRules.MostLength).Select(i => (char)('a' + i % 20)));

        Assert.Null(PasswordRules.Complaint(longest, "ada", "cellar"));
        Assert.Contains("at most", PasswordRules.Complaint(longest + "x", "ada", "cellar"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ada\nconfigure")]
    [InlineData("")]
    [InlineData(" ada")]
    [InlineData("a name of more than forty characters, which is many")]
    public void ANameThatWouldConfuseIsRefused(string name) => Assert.NotNull(PasswordRules.NameComplaint(name));

    [Fact]
    public async Task OnlyOneIsCheckedAtATimeAndTooManyAreTurnedAway()
    {
        using var check = new PasswordCheck();
        var slow = new PasswordHash(2_000_000, RandomNumberGenerator.GetBytes(16), new byte[32]);
        var person = new Person("ada", Role.View, slow, "", []);

        var tries = Enumerable.Range(0, 8).Select(_ => check.FitsAsync(person, "a guess of mine", CancellationToken.None)).ToList();

        Assert.True(check.IsBusy);
        Assert.DoesNotContain(true, await Task.WhenAll(tries));
        Assert.False(check.IsBusy);
    }
}
