Console.WriteLine("detailgen");
