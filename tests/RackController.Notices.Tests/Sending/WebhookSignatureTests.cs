using System.Security.Cryptography;
using Microsoft.AspNetCore.Http;
using StandardWebhooks;

namespace RackController.Notices.Tests;

public sealed class WebhookSignatureTests
{
    // The worked example of the test suites of the Standard Webhooks libraries, as many repositories repeat it.
    [Fact]
    public void ItIsThatOfThePublishedExample() => Assert.Equal(
        "v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=",
        WebhookSignature.Of(
            WebhookSignature.KeyOf("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw")!, "msg_p5jXN8AQM9LWM0D4loKWxJek", 1614265330,
            """{"test": 2432232314}"""));

    // The package StandardWebhooks, which is not ours, takes what we sign.
    [Fact]
    public void ALibraryOfTheStandardTakesIt()
    {
        var secret = "whsec_" + Convert.ToBase64String(RandomNumberGenerator.GetBytes(32));
        var now = DateTimeOffset.UtcNow.ToUnixTimeSeconds();
        const string Body = """{"type":"rack.notice","data":{"site":"Küche"}}""";
        var headers = new HeaderDictionary
        {
            ["webhook-id"] = "one",
            ["webhook-timestamp"] = $"{now}",
            ["webhook-signature"] = WebhookSignature.Of(WebhookSignature.KeyOf(secret)!, "one", now, Body),
        };
        var verifier = new StandardWebhook(secret);

        verifier.Verify(Body, headers);
        Assert.ThrowsAny<Exception>(() => verifier.Verify(Body + " ", headers));
    }

    [Theory]
    [InlineData("")]
    [InlineData("MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw")]
    [InlineData("whsec_")]
    [InlineData("whsec_c2hvcnQ=")]
    [InlineData("whsec_no base64")]
    public void WhatIsNoSecretIsNotTakenForOne(string text) => Assert.Null(WebhookSignature.KeyOf(text));
}
