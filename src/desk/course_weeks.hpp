/// What one week of an item's course says; for its picture and its table.
#pragma once

#include <string>
#include <vector>

#include "desk/picture/picture.hpp"
#include "supply/item_course.hpp"

namespace sparewell::desk {

/// The stock at the end of that day of the course, and what happens until the next.
[[nodiscard]] std::string week_words(const supply::ItemCourse& course, std::size_t week);
[[nodiscard]] picture::FigureTable course_table(const supply::ItemCourse& course);
/// The point of that day; the last one when there is none.
[[nodiscard]] const supply::CoursePoint& find_week(const std::vector<supply::CoursePoint>& points,
                                                   Date on);

}  // namespace sparewell::desk
