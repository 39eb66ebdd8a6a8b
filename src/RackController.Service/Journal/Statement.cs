using Microsoft.Data.Sqlite;

namespace RackController.Service;

/// <summary>One prepared statement and its parameters, in the order in which they are named.</summary>
internal sealed class Statement : IDisposable
{
    private readonly SqliteCommand command;

    public Statement(SqliteConnection connection, string sql, params ReadOnlySpan<string> parameters)
    {
        command = connection.CreateCommand();
        command.CommandText = sql;
        foreach (var name in parameters)
        {
            command.Parameters.Add(new SqliteParameter(name, null));
        }
    }

    /// <summary>Runs the statement.</summary>
    /// <param name="values">One value for each parameter.</param>
    public void Run(params ReadOnlySpan<object?> values)
    {
        for (var i = 0; i < values.Length; i++)
        {
            command.Parameters[i].Value = values[i] ?? DBNull.Value;
        }

        command.ExecuteNonQuery();
    }

    public void Dispose() => command.Dispose();
}
