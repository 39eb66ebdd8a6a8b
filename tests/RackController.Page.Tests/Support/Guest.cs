using System.Net;
using System.Text.RegularExpressions;
using System.Web;

namespace RackController.Page.Tests;

/// <summary>Somebody with a browser of their own: it keeps cookies, and sends what the forms of its pages carry.</summary>
internal sealed partial class Guest : IDisposable
{
    private readonly CookieContainer cookies = new();
    private readonly HttpClient client;

    public Guest(Uri address)
    {
        // The page's own certificate is known to nobody; that it is shown is tested where it matters.
        client = new HttpClient(new HttpClientHandler
        {
            AllowAutoRedirect = false,
            CookieContainer = cookies,
            ServerCertificateCustomValidationCallback = (_, _, _, _) => true,
        })
        {
            BaseAddress = address,
        };
        client.DefaultRequestHeaders.Accept.ParseAdd("text/html");
    }

    /// <summary>What goes with every request.</summary>
    public HttpClient Client => client;

    /// <summary>What the cookie of the session says; empty where there is none.</summary>
    public string Cookie => cookies.GetAllCookies().Select(cookie => cookie.Value).FirstOrDefault() ?? "";

    /// <summary>Signs in.</summary>
    public async Task<HttpStatusCode> SignInAsync(string name, string password)
    {
        using var answer = await client.PostAsync("/sign-in", Form(("name", name), ("password", password)));
        return answer.StatusCode;
    }

    /// <summary>Asks for a page.</summary>
    public async Task<HttpStatusCode> GetAsync(string address)
    {
        using var answer = await client.GetAsync(address, HttpCompletionOption.ResponseHeadersRead);
        return answer.StatusCode;
    }

    /// <summary>Sends a form with what shows that a page of ours sent it.</summary>
    public async Task<HttpResponseMessage> PostAsync(string address, params (string Name, string Value)[] fields) =>
        await client.PostAsync(address, Form([.. fields, (Doorman.FormField, await FormTokenAsync())]));

    /// <summary>What the forms of its pages carry.</summary>
    public async Task<string> FormTokenAsync() => HttpUtility.HtmlDecode(Token().Match(await client.GetStringAsync("/")).Groups[1].Value);

    /// <summary>A form as browsers send it.</summary>
    public static FormUrlEncodedContent Form(params (string Name, string Value)[] fields) =>
        new(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));

    public void Dispose() => client.Dispose();

    [GeneratedRegex("name=\"form-token\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
