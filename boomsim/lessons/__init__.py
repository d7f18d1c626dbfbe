"""What a lesson's notebook imports: open the lesson, show tables and pictures, check yourself."""

from boomsim.lessons.lesson_display import percent as percent
from boomsim.lessons.lesson_display import picture as picture
from boomsim.lessons.lesson_display import table as table
from boomsim.lessons.lesson_display import tell as tell
from boomsim.lessons.lesson_order import LESSONS as LESSONS
from boomsim.lessons.lesson_sliders import Slides as Slides
from boomsim.lessons.open_lesson import Open as Open
from boomsim.lessons.open_lesson import lesson as lesson
from boomsim.lessons.printed_figures import length_of as length_of
from boomsim.lessons.self_check import Check as Check
from boomsim.lessons.self_check import Verdict as Verdict
