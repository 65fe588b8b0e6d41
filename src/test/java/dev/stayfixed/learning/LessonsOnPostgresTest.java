package dev.stayfixed.learning;

import dev.stayfixed.platform.OnPostgres;

@OnPostgres
class LessonsOnPostgresTest extends LessonStories {}
