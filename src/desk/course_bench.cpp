#include "desk/course_bench.hpp"

namespace sparewell::desk {

ItemCoursePtr CourseBench::of(const ItemCode& item) {
  const auto known = known_.find(item);
  if (known != known_.end()) return known->second;
  const Assessment& assessment = day_->assessment();
  if (!courses_) {
    lives_ = without_held(assessment.lives, assessment.held_needs);
    courses_.emplace(assessment.clinic, lives_, assessment.today,
                     supply::policy_of(assessment.clinic.settings));
  }
  auto course = courses_->of(item, day_->proposed(item));
  ItemCoursePtr made;
  if (course) made = std::make_shared<const supply::ItemCourse>(std::move(*course));
  known_.emplace(item, made);
  return made;
}

}  // namespace sparewell::desk
