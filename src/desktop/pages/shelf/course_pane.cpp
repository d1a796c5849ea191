#include "desktop/pages/shelf/course_pane.hpp"

#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desk/describe_failure.hpp"
#include "desktop/chart/chart_view.hpp"
#include "desktop/widgets/headings.hpp"
#include "desktop/widgets/quiet_worker.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

CoursePane::CoursePane(wxWindow* parent)
    : wxPanel{parent}, work_{quiet_worker(), desk::NewestWork::Keep::newest} {
  auto* heading = section_heading(this, said("Stock over the next weeks"));
  chart_ = new ChartView{this, said("Stock over the next weeks, drawn")};
  chart_->set_least_height(7);
  week_ = new WrappedLabel{this};
  chart_->when_selected([this](const std::string& id) {
    std::string words;
    for (const auto& stop : chart_->picture().stops) {
      if (stop.id == id) words = stop.words;
    }
    week_->set_text(words);
    Layout();
  });
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(heading, wxSizerFlags{}.Border(wxBOTTOM, FromDIP(4)));
  sizer->Add(chart_, wxSizerFlags{1}.Expand());
  sizer->Add(week_, wxSizerFlags{}.Expand().Border(wxTOP, FromDIP(2)));
  SetSizer(sizer);
  keep_wrapped(*this, {week_}, FromDIP(4));
  choose("");
}

void CoursePane::show(const desk::DayPtr& day) {
  work_.forget();
  bench_ = day ? std::make_shared<desk::CourseBench>(day) : nullptr;
  item_.clear();
}

void CoursePane::choose(const std::string& item) {
  if (!item.empty() && item == item_) return;
  item_ = item;
  work_.forget();
  week_->set_text("");
  if (item.empty() || !bench_) {
    chart_->show(desk::words_as_picture(said("Choose an item to see how long its stock lasts.")));
    return;
  }
  chart_->show(desk::words_as_picture(
      say("The stock of {} over the next weeks is being worked out...", item)));
  auto course = std::make_shared<desk::ItemCoursePtr>();
  work_.ask([bench = bench_, item, course] { *course = bench->of({item}); },
            [this, item, course](const std::exception_ptr& failure) {
              if (item != item_) return;
              if (failure) {
                chart_->show(desk::words_as_picture(desk::describe_failure(failure)));
              } else if (*course) {
                chart_->show(desk::stock_picture(*course));
              } else {
                chart_->show(desk::words_as_picture(
                    say("The catalogue has no item {}, so that its stock is not foreseen.", item)));
              }
            });
}

}  // namespace sparewell::desktop
