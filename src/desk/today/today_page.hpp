/// The page "Today": what needs a person across the three jobs, and where it is done.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "desk/billing/billing_page.hpp"
#include "desk/today/today_row.hpp"

namespace sparewell::desk {

/// The rows of ordering and of patients on one day.
using TodayWorkPtr = std::shared_ptr<const std::vector<TodayRow>>;
/// Looks at everyone, for a background job: beside reading the day.
[[nodiscard]] TodayWorkPtr find_work(const Day& day);

struct TodayDetail {
  std::string title;     ///< job, urgency and kind
  std::string sentence;  ///< whole
  std::string help;      ///< what the kind means
  std::string action;    ///< label of the button; "" where nothing is to be done
};

class TodayPage {
 public:
  /// How far the comparison of the books is.
  enum class Books { not_compared, comparing, compared };

  TodayPage();

  void show(DayPtr day, TodayWorkPtr work);
  /// `items` counts when the books are compared.
  void show_books(Books books, const WorklistPtr& items);
  /// Empty: all jobs.
  void show_only(std::optional<Work> work);
  /// By job and urgency. A job without anything to do has one row that says so.
  [[nodiscard]] Table& table() { return table_; }
  /// What is to be done on the day, in one or two sentences.
  [[nodiscard]] std::string headline() const;
  [[nodiscard]] std::string empty_words() const;
  /// Rows that ask for something.
  [[nodiscard]] int count() const;
  [[nodiscard]] TodayDetail detail(const std::string& id) const;
  /// Where the row leads; empty where nothing is to be done.
  [[nodiscard]] std::optional<Destination> destination(const std::string& id) const;

  /// "Everything" and the jobs in their order.
  [[nodiscard]] static std::vector<std::string> work_choices();

 private:
  void fill();
  [[nodiscard]] const TodayRow* row(const std::string& id) const;
  [[nodiscard]] std::vector<TodayRow> rows_of_books() const;

  DayPtr day_;
  TodayWorkPtr work_;
  Books books_ = Books::not_compared;
  WorklistPtr items_;
  std::vector<TodayRow> rows_;
  Table table_;
};

}  // namespace sparewell::desk
