Console.WriteLine("RackController");
