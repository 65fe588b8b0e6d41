package dev.stayfixed.people;

import dev.stayfixed.platform.TellingOnH2;
import org.springframework.test.context.TestPropertySource;

/** In a service of its own: once there are people, everybody signs in. */
@TellingOnH2
@TestPropertySource(properties = {"stayfixed.public-url=https://cars.example", "stayfixed.people.tries-per-minute=20"})
class PeopleOnH2Test extends PeopleStories {}
