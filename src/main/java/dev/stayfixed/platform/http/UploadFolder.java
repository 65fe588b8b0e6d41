package dev.stayfixed.platform.http;

import dev.stayfixed.platform.storage.InstanceFolder;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.springframework.boot.tomcat.ConfigurableTomcatWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.stereotype.Component;

/** What Tomcat keeps of an upload while it takes a form apart lies in the folder of this instance, too. */
@Component
class UploadFolder implements WebServerFactoryCustomizer<ConfigurableTomcatWebServerFactory> {

    private final InstanceFolder folder;

    UploadFolder(InstanceFolder folder) {
        this.folder = folder;
    }

    @Override
    public void customize(ConfigurableTomcatWebServerFactory factory) {
        try {
            factory.setBaseDirectory(folder.folder("tomcat").toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
