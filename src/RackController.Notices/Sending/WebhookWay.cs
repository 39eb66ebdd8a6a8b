using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using RackController.Model;

namespace RackController.Notices;

/// <summary>Tells a program by a signed request.</summary>
/// <param name="plan">Which program.</param>
/// <param name="client">Who asks for it.</param>
/// <param name="time">The clock whose time is signed.</param>
internal sealed class WebhookWay(WebhookPlan plan, WebClient client, TimeProvider time) : IWay
{
    /// <inheritdoc/>
    public string Name => plan.Name;

    /// <inheritdoc/>
    public AlarmPriority AtLeast => plan.AtLeast;

    /// <inheritdoc/>
    public bool IsForPrograms => true;

    /// <inheritdoc/>
    public async Task<SendResult> SendAsync(Letter letter, CancellationToken cancellation)
    {
        var text = SecretFile.Read(plan.SecretFile, out var complaint);
        if (complaint is not null)
        {
            return SendResult.Failed(complaint);
        }

        if (WebhookSignature.KeyOf(text) is not { } key)
        {
            return SendResult.Failed($"{plan.SecretFile} holds no secret: write `whsec_` and 24 to 64 random bytes in base64");
        }

        // The time of this try: whoever gets it turns away what is old, so that nobody can play it again.
        var timestamp = time.GetUtcNow().ToUnixTimeSeconds();
        using var request = new HttpRequestMessage(HttpMethod.Post, plan.Address);
        request.Content = new StringContent(letter.Body, Encoding.UTF8, new MediaTypeHeaderValue("application/json"));
        request.Headers.Add("webhook-id", letter.Id);
        request.Headers.Add("webhook-timestamp", timestamp.ToString(CultureInfo.InvariantCulture));
        request.Headers.TryAddWithoutValidation("webhook-signature", WebhookSignature.Of(key, letter.Id, timestamp, letter.Body));
        return await client.AskAsync(request, cancellation).ConfigureAwait(false);
    }
}
