package dev.stayfixed.platform.storage;

import java.nio.file.Path;
import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * What belongs to one instance of the service.
 *
 * @param temporary where it makes its folder of files that end with it
 */
@ConfigurationProperties("stayfixed")
record InstanceSettings(Path temporary) {}
