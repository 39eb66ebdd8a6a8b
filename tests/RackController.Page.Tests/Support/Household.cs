using RackController.Service;

namespace RackController.Page.Tests;

/// <summary>Three people who may sign in, one of each role. Invented.</summary>
internal static class Household
{
    public const string Ada = "ada";
    public const string Ben = "ben";
    public const string Cleo = "cleo";

    // One hash for all, since each takes a part of a second.
    private static readonly Lazy<PasswordHash> hash = new(() => PasswordHash.Of(Password));

    /// <summary>The password of each.</summary>
    public const string Password = "four damp wool socks";

    /// <summary>Starts the demo rack with them.</summary>
    public static Task<ServedRack> ServedAsync(Func<PageOptions, PageOptions>? howServed = null) =>
        ServedRack.OfFileAsync(prepare: MoveIn, howServed: howServed);

    /// <summary>Sets them up.</summary>
    public static void MoveIn(StateFolder folder)
    {
        var people = new People(folder);
        Assert.Null(people.Add(Ada, Role.Configure, hash.Value));
        Assert.Null(people.Add(Ben, Role.Operate, hash.Value));
        Assert.Null(people.Add(Cleo, Role.View, hash.Value));
    }

    /// <summary>One of them, signed in.</summary>
    public static async Task<Guest> GuestAsync(ServedRack served, string name)
    {
        var guest = new Guest(served.Address);
        Assert.Equal(System.Net.HttpStatusCode.SeeOther, await guest.SignInAsync(name, Password));
        return guest;
    }
}
