using Microsoft.Data.Sqlite;

namespace RackController.Service.Tests;

/// <summary>Reads a journal as a stranger would, by its tables.</summary>
internal static class JournalReader
{
    public static List<string> Column(string path, string sql)
    {
        using var connection = JournalFile.Connect(path, SqliteOpenMode.ReadOnly);
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var rows = command.ExecuteReader();
        var found = new List<string>();
        while (rows.Read())
        {
            found.Add(rows.GetValue(0).ToString() ?? "");
        }

        return found;
    }

    public static List<string> Events(string path) => Column(path, "SELECT because FROM events ORDER BY id");
}
