/// The course of the chosen item's stock, worked out away from the window.
#pragma once

#include <functional>
#include <memory>
#include <string>

#include <wx/panel.h>

#include "desk/course_bench.hpp"
#include "desk/newest_work.hpp"

namespace sparewell::desktop {

class ChartView;
class WrappedLabel;

class CoursePane : public wxPanel {
 public:
  explicit CoursePane(wxWindow* parent);

  /// Another day: nothing is known of its courses yet.
  void show(const desk::DayPtr& day);
  /// Shows the course of this item as soon as it is known; "" for none.
  void choose(const std::string& item);

 private:
  ChartView* chart_ = nullptr;
  WrappedLabel* week_ = nullptr;
  std::shared_ptr<desk::CourseBench> bench_;
  std::string item_;
  desk::NewestWork work_;
};

}  // namespace sparewell::desktop
