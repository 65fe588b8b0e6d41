package dev.stayfixed.learning;

import dev.stayfixed.platform.OnH2;

@OnH2
class LessonsOnH2Test extends LessonStories {}
