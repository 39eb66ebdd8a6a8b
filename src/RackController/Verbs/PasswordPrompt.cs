using System.Text;

namespace RackController.Verbs;

/// <summary>Asks for a password: twice and unseen at a terminal, else one line of what comes through a pipe.</summary>
internal static class PasswordPrompt
{
    /// <summary>Reads it.</summary>
    /// <param name="name">Whose it is to be.</param>
    /// <param name="prompt">Where the question goes.</param>
    /// <param name="complaint">Why there is none; null when there is one.</param>
    public static string Read(string name, TextWriter prompt, out string? complaint)
    {
        complaint = null;
        if (Console.IsInputRedirected)
        {
            return Console.In.ReadLine() ?? "";
        }

        var password = Unseen($"Password for {name}: ", prompt);
        if (Unseen("Again: ", prompt) != password)
        {
            complaint = "It was typed in two ways: nothing was changed.";
        }

        return password;
    }

    private static string Unseen(string question, TextWriter prompt)
    {
        prompt.Write(question);
        var typed = new StringBuilder();
        while (true)
        {
            var key = Console.ReadKey(intercept: true);
            if (key.Key == ConsoleKey.Enter)
            {
                prompt.WriteLine();
                return typed.ToString();
            }

            if (key.Key == ConsoleKey.Backspace)
            {
                typed.Length = Math.Max(0, typed.Length - 1);
            }
            else if (!char.IsControl(key.KeyChar))
            {
                typed.Append(key.KeyChar);
            }
        }
    }
}
