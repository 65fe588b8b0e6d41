package dev.stayfixed.people;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How people come in.
 *
 * @param invitation how long an invitation, or the code of the first owner, is good
 * @param link how long a link is good that signs in
 * @param session after what time a session ends in any case
 * @param triesPerMinute passwords and links that may be tried for one person, and four times as many from one address
 */
@ConfigurationProperties("stayfixed.people")
public record PeopleSettings(
        @DefaultValue("7d") Duration invitation,
        @DefaultValue("15m") Duration link,
        @DefaultValue("30d") Duration session,
        @DefaultValue("5") int triesPerMinute) {}
