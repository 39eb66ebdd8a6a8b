using System.CommandLine;
using System.CommandLine.Completions;
using System.Text;

namespace RackController.Conventions.Docs;

/// <summary>The manual page, in the macros of <c>man(7)</c>, made of the verbs that the program has.</summary>
internal static class ManualPage
{
    private const string Tail = """
        .SH EXIT STATUS
        .TP
        .B 0
        It went as expected.
        .TP
        .B 1
        The answer is no: a file is not right, a bench did not hold.
        .TP
        .B 2
        Wrong use.
        .TP
        .B 3
        It could not be tried.
        .SH FILES
        .TP
        .I /etc/rackcontroller/rack.yaml
        The rack that the service drives; a simulated one until you have written down your own.
        .TP
        .I /var/lib/rackcontroller
        The service's state folder: journal, lock, people and earlier rack files.
        What looks at them or changes them does so as the service:
        .B sudo \-u rackcontroller rackcontroller doctor /etc/rackcontroller/rack.yaml
        .TP
        .I ~/.local/state/rackcontroller
        The same for racks that you drive yourself, a folder for each rack file.
        .TP
        .I /var/log/rackcontroller
        Its log, which
        .B journalctl \-u rackcontroller
        shows as well.
        .TP
        .I /usr/share/rackcontroller/config
        Example racks and scenarios, and the schema of rack files for editors.
        .SH PORTS
        .TP
        .B 8474
        The page, for the machine itself.
        .TP
        .B 8475
        The page for the house, by HTTPS, once
        .I rackcontroller\-network.socket
        is enabled and the first person has a password.
        .SH CAUTION
        Mains power and water together can kill.
        Wiring, breakers, ground-fault protection and the load on the floor are for local codes and a licensed electrician to judge.
        The controller is not a safety device and is certified to no standard:
        a hard-wired float cutout and ground-fault protection belong in front of it.
        .SH SEE ALSO
        .BR systemctl (1),
        .BR gpiodetect (1)

        """;

    /// <summary>The page of a command and all its verbs.</summary>
    /// <param name="root">The command.</param>
    public static string Of(RootCommand root)
    {
        var page = new StringBuilder();
        page.AppendLine($"""
            .\" Made of the program's verbs; a test keeps it so.
            .TH RACKCONTROLLER 1 "" RackController "User Commands"
            .SH NAME
            rackcontroller \- drive flood-and-drain grow racks, or simulate them
            .SH SYNOPSIS
            .B rackcontroller
            .RI [ verb ]
            .RI [ argument ...]
            .RI [ option ...]
            .SH DESCRIPTION
            {Escaped(root.Description!)}
            Without a verb it drives a simulated demo rack.
            .SH VERBS
            """);
        foreach (var verb in root.Subcommands)
        {
            AddVerb(page, verb);
        }

        return page.Append(Tail).ToString();
    }

    private static void AddVerb(StringBuilder page, Command verb)
    {
        var arguments = verb.Arguments.Select(
            argument => argument.Arity.MinimumNumberOfValues == 0 ? $"[{argument.Name}]" : argument.Name);
        page.AppendLine($".SS {Escaped(string.Join(' ', arguments.Prepend(verb.Name)))}");
        page.AppendLine(Escaped(verb.Description!));
        foreach (var argument in verb.Arguments)
        {
            AddTerm(page, $".I {Escaped(argument.Name)}", argument.Description);
        }

        foreach (var option in verb.Options)
        {
            var values = option.ValueType == typeof(bool) ? [] : option.GetCompletions(CompletionContext.Empty).ToList();
            var choice = values.Count > 0 ? $" One of: {string.Join(", ", values.Select(value => value.Label))}." : "";
            AddTerm(page, $".BI {Escaped(option.Name)} \" {Escaped(option.HelpName ?? "")}\"", option.Description + choice);
        }
    }

    private static void AddTerm(StringBuilder page, string term, string? description) =>
        page.AppendLine(".TP").AppendLine(term).AppendLine(Escaped(description!));

    // A hyphen that is typed is `\-`; a line must not begin with a macro's dot.
    private static string Escaped(string text)
    {
        var escaped = text.Replace("\\", "\\e", StringComparison.Ordinal).Replace("-", "\\-", StringComparison.Ordinal);
        return escaped.StartsWith('.') || escaped.StartsWith('\'') ? "\\&" + escaped : escaped;
    }
}
