package dev.stayfixed.platform.http;

import java.util.List;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * By which names the service is called beside those that it knows by itself, as its operator states them.
 *
 * @param hosts names or addresses, without scheme and port
 */
@ConfigurationProperties("stayfixed")
record Hosts(@DefaultValue List<String> hosts) {}
