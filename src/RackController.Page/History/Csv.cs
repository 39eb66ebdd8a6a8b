using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Http;
using NodaTime;

namespace RackController.Page;

/// <summary>Tables for a spreadsheet: RFC 4180 in UTF-8, times in ISO 8601 with their offset, numbers with a point.</summary>
internal static class Csv
{
    private static readonly System.Buffers.SearchValues<char> asksForQuotes = System.Buffers.SearchValues.Create(",\"\r\n");

    /// <summary>Answers with a table.</summary>
    /// <param name="context">The request.</param>
    /// <param name="name">What the file is called.</param>
    /// <param name="rows">Its rows, the header first.</param>
    public static async Task WriteAsync(HttpContext context, string name, IEnumerable<IEnumerable<string>> rows)
    {
        context.Response.ContentType = "text/csv; charset=utf-8; header=present";
        context.Response.Headers.ContentDisposition = $"attachment; filename=\"{name}\"";
        await using var writer = new StreamWriter(context.Response.Body, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        foreach (var row in rows)
        {
            await writer.WriteAsync(Line(row)).ConfigureAwait(false);
        }
    }

    /// <summary>One row, with its end.</summary>
    public static string Line(IEnumerable<string> fields) => string.Join(',', fields.Select(Field)) + "\r\n";

    /// <summary>A time of a zone.</summary>
    public static string Time(Instant at, DateTimeZone zone) =>
        at.InZone(zone).ToString("uuuu'-'MM'-'dd'T'HH':'mm':'sso<+HH:mm>", CultureInfo.InvariantCulture);

    /// <summary>A number; empty where there is none.</summary>
    public static string Number(double? value) => value?.ToString("0.###", CultureInfo.InvariantCulture) ?? "";

    /// <summary>A text that people wrote, so that no spreadsheet takes it for a formula.</summary>
    /// <param name="text">The text.</param>
    public static string Text(string text) => text.Length > 0 && "=+-@\t\r".Contains(text[0], StringComparison.Ordinal) ? "'" + text : text;

    private static string Field(string text) =>
        text.AsSpan().ContainsAny(asksForQuotes) ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
}
