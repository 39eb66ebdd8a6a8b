using System.CommandLine;
using System.CommandLine.Parsing;
using RackController.Model;
using RackController.Page;
using RackController.Service;

namespace RackController.Verbs;

/// <summary><c>people list|add|role|password|remove FILE [NAME]</c>: who may sign in on the page, for a board without a browser. A running
/// service takes a change up within a second.</summary>
internal static class PeopleVerb
{
    private const string List = "list";
    private const string Add = "add";
    private const string SetRole = "role";
    private const string SetPassword = "password";
    private const string Remove = "remove";

    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var what = new Argument<string>("what")
        {
            Description = "list everybody; add somebody; change their role or password; remove them, with their tokens. Without the last "
                + "person the page is for this machine only.",
        };
        string[] deeds = [List, Add, SetRole, SetPassword, Remove];
        what.Validators.Add(result => OneOf(deeds, result, "people"));
        what.CompletionSources.Add(deeds);
        var file = Parsing.File("The rack file of the service.");
        var name = new Argument<string>("name") { Description = "Whom.", Arity = ArgumentArity.ZeroOrOne, DefaultValueFactory = _ => "" };
        var role = new Option<string>("--role")
        {
            HelpName = string.Join('|', RoleWords.All),
            Description = "What they may do: look, also ask things of the rack, or everything.",
        };
        role.Validators.Add(result => OneOf(RoleWords.All, result, "--role"));
        role.CompletionSources.Add([.. RoleWords.All]);
        var state = new Option<DirectoryInfo?>("--state")
        {
            HelpName = "folder",
            Description = "The folder of the journal. Default: that of the service for its own rack file, else the one that `run` uses.",
        };
        var verb = new Command("people", "List and change who may sign in on the page; a password is asked for, or read from a pipe.")
        {
            what, file, name, role, state,
        };
        verb.SetAction(parsed => Run(
            new PeopleRequest(
                parsed.GetRequiredValue(what), parsed.GetRequiredValue(file).ToString(), parsed.GetValue(name) ?? "",
                RoleWords.Parse(parsed.GetValue(role) ?? ""), parsed.GetValue(state)?.ToString()),
            parsed.InvocationConfiguration));
        return verb;
    }

    private static void OneOf(IReadOnlyCollection<string> words, SymbolResult result, string where)
    {
        if (result.Tokens.Count == 1 && !words.Contains(result.Tokens[0].Value))
        {
            result.AddError($"{where} takes one of {string.Join(", ", words)}, and not `{result.Tokens[0].Value}`");
        }
    }

    private static int Run(PeopleRequest asked, InvocationConfiguration console)
    {
        if (MissingFrom(asked) is { } missing)
        {
            console.Error.WriteLine($"{missing}: see rackcontroller people --help");
            return ExitCode.WrongUse;
        }

        if (RackFileArgument.Read(asked.File, console.Error) is not { } site)
        {
            return ExitCode.AnswerIsNo;
        }

        var people = new People(StateFolder.OfDriver(asked.State, asked.File, site.Io));
        if (people.Fault is { } fault)
        {
            throw new CouldNotRunException($"{fault}: mend it, or remove it and begin anew");
        }

        var complaint = asked.What == List ? Print(people, console.Output) : Change(asked, site, people, console.Error);
        if (complaint is not null)
        {
            console.Error.WriteLine(complaint);
            return ExitCode.AnswerIsNo;
        }

        if (asked.What != List)
        {
            console.Output.WriteLine(Done(asked, people));
        }

        return ExitCode.AsExpected;
    }

    private static string? MissingFrom(PeopleRequest asked) =>
        asked.What != List && asked.Name.Length == 0 ? $"people {asked.What} takes the name of a person after the file"
        : asked.What is Add or SetRole && asked.Role is null ? $"people {asked.What} takes --role {string.Join(", ", RoleWords.All)}"
        : null;

    private static string? Change(PeopleRequest asked, Site site, People people, TextWriter prompt) => asked.What switch
    {
        Add => PasswordRules.NameComplaint(asked.Name)
            ?? Ask(asked.Name, site, prompt, out var first) ?? people.Add(asked.Name, asked.Role!.Value, first!),
        SetRole => people.SetRole(asked.Name, asked.Role!.Value),
        SetPassword => Ask(asked.Name, site, prompt, out var fresh) ?? people.SetPassword(asked.Name, fresh!),
        _ => people.Remove(asked.Name, mayBeLast: true),
    };

    private static string? Ask(string name, Site site, TextWriter prompt, out PasswordHash? hash)
    {
        hash = null;
        var password = PasswordPrompt.Read(name, prompt, out var complaint);
        complaint ??= PasswordRules.Complaint(password, name, site.Name);
        if (complaint is null)
        {
            hash = PasswordHash.Of(password);
        }

        return complaint;
    }

    private static string? Print(People people, TextWriter output)
    {
        foreach (var person in people.All)
        {
            var tokens = person.Tokens.Length switch { 0 => "", 1 => ", 1 token", var many => $", {many} tokens" };
            output.WriteLine($"{person.Name} may {RoleWords.Of(person.Role)}{tokens}");
        }

        output.WriteLine(people.AreNone ? "Nobody is set up: the page is for this machine only." : $"{people.All.Length} may sign in");
        return null;
    }

    private static string Done(PeopleRequest asked, People people) => people.Find(asked.Name) is { } person
        ? $"{person.Name} may {RoleWords.Of(person.Role)}"
        : people.AreNone ? $"{asked.Name} is removed; nobody is left, so the page is for this machine only" : $"{asked.Name} is removed";

    private sealed record PeopleRequest(string What, string File, string Name, Role? Role, string? State);
}
