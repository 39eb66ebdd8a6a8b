using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime;

namespace RackController.Page;

/// <summary>Tokens for programs.</summary>
/// <param name="access">What access hangs on.</param>
/// <param name="showPeople">Shows the page of all people, with a complaint.</param>
internal sealed class TokenRoutes(AccessParts access, Func<HttpContext, string?, Task> showPeople)
{
    private const int MostOfOnePerson = 20;

    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/people/tokens/add", AddAsync).ForPeople(Role.Configure);
        routes.MapPost("/people/tokens/revoke", RevokeAsync).ForPeople(Role.Configure);
    }

    private async Task AddAsync(HttpContext context)
    {
        if (await FormReading.ReadAsync(context).ConfigureAwait(false) is not { } form)
        {
            return;
        }

        var name = form["name"].ToString().Trim();
        if (Visitor.Of(context).Person is not { } maker)
        {
            await showPeople(context, "Set up somebody first, whose program it is.").ConfigureAwait(false);
            return;
        }

        var secret = Secret.New();
        var role = RoleWords.Parse(form["role"].ToString());
        var complaint = PasswordRules.NameComplaint(name)
            ?? (role is null || role > maker.Role ? "Choose a role that is yours too."
                : maker.Tokens.Length >= MostOfOnePerson ? $"You have {MostOfOnePerson} tokens: revoke one first."
                : access.People.AddToken(
                    maker.Name, new ProgramToken(name, role.Value, Secret.Digest(secret), SystemClock.Instance.GetCurrentInstant())));
        if (complaint is not null)
        {
            await showPeople(context, complaint).ConfigureAwait(false);
            return;
        }

        access.Rack.Record($"token {name} may {RoleWords.Of(role!.Value)}", $"{maker.Name} made it");
        var page = new DonePage(
            new FrameView(access.Rack.Site.Name, "A token", "People", IsLive: false), $"The token {name}",
            ["Copy it now: it is shown this once and kept nowhere.", "The program sends it as Authorization: Bearer and the token."],
            secret, ["/people"]);
        await Answer.WithAsync(context, Slices.Done.Create(page)).ConfigureAwait(false);
    }

    private async Task RevokeAsync(HttpContext context)
    {
        if (await FormReading.ReadAsync(context).ConfigureAwait(false) is not { } form)
        {
            return;
        }

        var digest = form["token"].ToString();
        var name = access.People.All.SelectMany(person => person.Tokens).FirstOrDefault(token => token.Digest == digest)?.Name;
        var complaint = access.People.RemoveToken(digest);
        if (complaint is not null)
        {
            await showPeople(context, complaint).ConfigureAwait(false);
            return;
        }

        access.Sessions.Forget(digest);
        access.Rack.Record($"token {name} was revoked", $"{Visitor.Of(context).Name} asked for it");
        await Answer.SeeOther(context, "/people").ConfigureAwait(false);
    }
}
