package dev.stayfixed.simulator;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.databind.json.JsonMapper;

/** Writes the demonstration data: scans, signal logs and the steps that send them in. Run it after a change of the stories. */
public final class SampleScenario {

    private SampleScenario() {}

    /** Into the folder given, or into sample-logs. */
    public static void main(String... args) throws IOException {
        Path folder = Path.of(args.length > 0 ? args[0] : "sample-logs");
        for (Map.Entry<String, String> file : files().entrySet()) {
            Path path = folder.resolve(file.getKey());
            Files.createDirectories(path.resolveSibling("."));
            Files.writeString(path, file.getValue());
        }
    }

    /** Path inside the folder, and content. */
    static Map<String, String> files() {
        Workshop shop = new Workshop();
        new SampleStories(shop).all();
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer =
                new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(lines);
        Map<String, String> files = new LinkedHashMap<>(shop.files());
        files.put("scenario.json", JsonMapper.shared().writer().with(printer).writeValueAsString(shop.steps()) + "\n");
        return files;
    }
}
