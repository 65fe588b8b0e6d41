package dev.stayfixed.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.platform.OtherInstance;
import dev.stayfixed.platform.OwnProcess;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;

/** A service that others can reach. */
@ExtendWith(OutputCaptureExtension.class)
class OpenAddressTest {

    @Test
    void withoutTlsAndProxyItDoesNotStart(@TempDir Path folder) {
        assertThatThrownBy(() -> new OwnProcess(OwnProcess.url(folder), "--server.address=0.0.0.0").close())
                .hasMessageContaining("APPLICATION FAILED TO START")
                .hasMessageContaining("server.address: found 0.0.0.0, which others reach")
                .hasMessageContaining("name the address of the proxy in stayfixed.proxy");
    }

    @Test
    void itsFirstStartNamesTheCodeOfTheOwner(@TempDir Path folder, CapturedOutput log) {
        String url = OwnProcess.url(folder);
        String[] open = {
            "server.address=0.0.0.0", "stayfixed.proxy=192.0.2.7", "stayfixed.secret-key-file=" + folder.resolve("key")
        };
        try (OtherInstance service = new OtherInstance(url, "stayfixed", "", open)) {
            Matcher code = Pattern.compile("until there is one: (\\S+)").matcher(log);
            assertThat(code.find()).isTrue();
            Visitor owner = new Visitor(service.port(), "203.0.113.7");
            owner.open("/first-owner").is(200);
            owner.submit(
                            "/first-owner",
                            "code",
                            code.group(1),
                            "name",
                            "Rana Holt",
                            "mail",
                            "rana@shop.example",
                            "password",
                            "a rather long password")
                    .is(302);
            owner.open("/settings/people").is(200);
        }
        int before = log.length();
        try (OtherInstance service = new OtherInstance(url, "stayfixed", "", open)) {
            assertThat(log.toString().substring(before)).doesNotContain("until there is one");
            new Visitor(service.port(), "203.0.113.7").open("/").is(303);
        }
    }
}
