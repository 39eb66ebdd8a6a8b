using RackController.Model;
using RackController.Service;

namespace RackController.Live;

/// <summary>Every reading with its unit, in as many columns as fit.</summary>
internal static class ReadingLines
{
    private const string Gap = "  ";
    private const int MostColumns = 4;

    /// <summary>Lays them out.</summary>
    /// <param name="site">The site.</param>
    /// <param name="status">What to show.</param>
    /// <param name="chosen">The rack to show, with the circuits; null for all.</param>
    /// <param name="width">Columns of the screen.</param>
    public static List<StyledLine> Of(Site site, SiteStatus status, RackId? chosen, int width)
    {
        var shown = status.Sensors
            .Where(sensor => chosen is null || sensor.Sensor.Rack is null || sensor.Sensor.Rack == chosen)
            .Select(sensor => new Cell(
                Names.Short(site, sensor.Sensor.Name, chosen), ReadingWords.Words(sensor, site.Units),
                sensor.Doubt is not null || ReadingWords.IsAbnormal(sensor)))
            .ToList();
        for (var columns = MostColumns; columns > 1; columns--)
        {
            var lines = InColumns(shown, columns);
            if (lines.TrueForAll(line => line.Width <= width))
            {
                return lines;
            }
        }

        return InColumns(shown, 1);
    }

    private static List<StyledLine> InColumns(List<Cell> cells, int columns)
    {
        var rows = (cells.Count + columns - 1) / columns;
        var lines = Enumerable.Range(0, rows).Select(_ => new StyledLine().Add(" ")).ToList();
        foreach (var column in cells.Chunk(Math.Max(1, rows)))
        {
            var nameWidth = column.Max(cell => cell.Name.Length) + 1;
            var valueWidth = Math.Max(10, column.Max(cell => cell.Words.Length));
            for (var row = 0; row < column.Length; row++)
            {
                var cell = column[row];
                lines[row].AddColumn(cell.Name, nameWidth, Tone.Quiet)
                    .AddColumn(cell.Words, valueWidth, cell.IsOdd ? Tone.Caution : Tone.Plain)
                    .Add(Gap);
            }
        }

        return lines;
    }

    /// <summary>One reading; what is odd carries a sign, so that colour need not tell.</summary>
    private sealed record Cell(string Name, string Value, bool IsOdd)
    {
        public string Words => IsOdd ? $"! {Value}" : Value;
    }
}
