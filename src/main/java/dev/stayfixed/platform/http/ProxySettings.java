package dev.stayfixed.platform.http;

import java.util.List;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * The proxy in front of the service, as its operator states it.
 *
 * @param proxy addresses or networks, such as 192.0.2.7 or 192.0.2.0/24, that are believed about where a request came from
 */
@ConfigurationProperties("stayfixed")
record ProxySettings(@DefaultValue List<String> proxy) {}
