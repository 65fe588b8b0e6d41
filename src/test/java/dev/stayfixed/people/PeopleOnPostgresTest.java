package dev.stayfixed.people;

import dev.stayfixed.platform.TellingOnPostgres;
import org.springframework.test.context.TestPropertySource;

/** In a service of its own: once there are people, everybody signs in. */
@TellingOnPostgres
@TestPropertySource(properties = {"stayfixed.public-url=https://cars.example", "stayfixed.people.tries-per-minute=20"})
class PeopleOnPostgresTest extends PeopleStories {}
