using System.Collections.Immutable;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace RackController.Page;

/// <summary>Who may sign in, and what each may do.</summary>
/// <param name="access">What access hangs on.</param>
/// <param name="served">Where the page is served.</param>
internal sealed class PeopleRoutes(AccessParts access, ServedAt served)
{
    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/people", context => ShowAsync(context, null)).ForPeople(Role.Configure);
        routes.MapPost("/people/first", AddFirstAsync).ForPeople(Role.Configure);
        routes.MapPost("/people/add", AddAsync).ForPeople(Role.Configure);
        routes.MapPost("/people/role", SetRoleAsync).ForPeople(Role.Configure);
        routes.MapPost("/people/password", SetPasswordAsync).ForPeople(Role.Configure);
        routes.MapPost("/people/remove", RemoveAsync).ForPeople(Role.Configure);
        new TokenRoutes(access, ShowAsync).Map(routes);
    }

    private Task ShowAsync(HttpContext context, string? complaint)
    {
        if (complaint is not null)
        {
            context.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        }

        var all = access.People.All;
        var reader = Visitor.Of(context).Person;
        var zone = access.Rack.Site.Zone;
        var tokens = all.SelectMany(person => person.Tokens.Select(token => new TokenView(
            token.Digest, token.Name, RoleWords.Of(token.Role), person.Name,
            access.Sessions.LastUseOf(token) is { } used ? PageWords.Date(used, zone) : "never")));
        var page = new PeoplePage(
            new FrameView(access.Rack.Site.Name, "People", "People", IsLive: false), complaint,
            [.. all.Select(person => new PersonView(person.Name, RoleWords.Of(person.Role), person == reader))], [.. tokens], served);
        return Answer.WithAsync(context, Slices.People.Create(page));
    }

    private async Task AddFirstAsync(HttpContext context)
    {
        if (await FormReading.ReadAsync(context).ConfigureAwait(false) is not { } form)
        {
            return;
        }

        var isSame = form["password"].ToString() == form["again"].ToString();
        var complaint = isSame ? await AddAsync(context, form, Role.Configure, mustBeFirst: true).ConfigureAwait(false)
            : "The password was typed in two ways.";
        if (complaint is not null)
        {
            await ShowAsync(context, complaint).ConfigureAwait(false);
            return;
        }

        var moves = !served.Later.IsEmpty && !served.Later.SequenceEqual(served.Addresses);
        ImmutableArray<string> lines = moves
            ? ["Everybody signs in from now on.", "In a second the page moves to these addresses, for the whole network:"]
            : ["Everybody signs in from now on, at this machine too."];
        var page = new DonePage(
            new FrameView(access.Rack.Site.Name, "The first person is set up", "People", IsLive: false), "The first person is set up",
            served.Fingerprint is { } print && moves ? [.. lines, CertificateWords(print)] : lines,
            null, moves ? served.Later : ["/sign-in"]);
        await Answer.WithAsync(context, Slices.Done.Create(page)).ConfigureAwait(false);
    }

    /// <summary>What a browser will say of a certificate of our own, and what to do about it.</summary>
    public static string CertificateWords(string fingerprint) =>
        $"Your browser warns once that it does not know the certificate. Go on only if its SHA-256 fingerprint is {fingerprint}.";

    private async Task AddAsync(HttpContext context)
    {
        if (await FormReading.ReadAsync(context).ConfigureAwait(false) is { } form)
        {
            var complaint = RoleWords.Parse(form["role"].ToString()) is { } role
                ? await AddAsync(context, form, role, mustBeFirst: false).ConfigureAwait(false)
                : "Choose a role.";
            await FinishAsync(context, complaint).ConfigureAwait(false);
        }
    }

    private async Task<string?> AddAsync(HttpContext context, IFormCollection form, Role role, bool mustBeFirst)
    {
        var (name, password) = (form["name"].ToString().Trim(), form["password"].ToString());
        var complaint = PasswordRules.NameComplaint(name) ?? PasswordRules.Complaint(password, name, access.Rack.Site.Name);
        complaint ??= access.People.Add(
            name, role, await access.Passwords.HashAsync(password, context.RequestAborted).ConfigureAwait(false), mustBeFirst);
        if (complaint is null)
        {
            access.Rack.Record($"{name} may {RoleWords.Of(role)}", $"{Visitor.Of(context).Name} set them up");
        }

        return complaint;
    }

    private async Task SetRoleAsync(HttpContext context)
    {
        if (await FormReading.ReadAsync(context).ConfigureAwait(false) is { } form)
        {
            var name = form["person"].ToString();
            var role = RoleWords.Parse(form["role"].ToString());
            var complaint = role is null ? "Choose a role." : access.People.SetRole(name, role.Value);
            RecordDone(context, complaint, $"{name} may {form["role"]} from now on");
            await FinishAsync(context, complaint).ConfigureAwait(false);
        }
    }

    private async Task SetPasswordAsync(HttpContext context)
    {
        if (await FormReading.ReadAsync(context).ConfigureAwait(false) is { } form)
        {
            var (name, password) = (form["person"].ToString(), form["password"].ToString());
            var complaint = PasswordRules.Complaint(password, name, access.Rack.Site.Name);
            complaint ??= access.People.SetPassword(
                name, await access.Passwords.HashAsync(password, context.RequestAborted).ConfigureAwait(false));
            RecordDone(context, complaint, $"password of {name} changed, their sessions are over");
            await FinishAsync(context, complaint).ConfigureAwait(false);
        }
    }

    private async Task RemoveAsync(HttpContext context)
    {
        if (await FormReading.ReadAsync(context).ConfigureAwait(false) is { } form)
        {
            var name = form["person"].ToString();
            var complaint = form["sure"] == "yes" ? access.People.Remove(name, mayBeLast: false)
                : $"Tick that {name} and their tokens are to be gone for good.";
            RecordDone(context, complaint, $"{name} was removed, with their tokens");
            await FinishAsync(context, complaint).ConfigureAwait(false);
        }
    }

    private void RecordDone(HttpContext context, string? complaint, string what)
    {
        if (complaint is null)
        {
            access.Rack.Record(what, $"{Visitor.Of(context).Name} asked for it");
        }
    }

    private Task FinishAsync(HttpContext context, string? complaint) =>
        complaint is null ? Answer.SeeOther(context, "/people") : ShowAsync(context, complaint);
}
