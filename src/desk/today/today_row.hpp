/// One thing that needs a person today: what, why, how urgent, and where it is done.
#pragma once

#include <string>
#include <vector>

#include "desk/destination.hpp"

namespace sparewell::desk {

/// The three jobs of the clinic, in the order of the page.
enum class Work { orders, patients, billing };
inline constexpr int works = 3;

enum class Urgency {
  overdue,   ///< its day has passed
  today,     ///< to be done or decided today
  this_week  ///< within `days_ahead`
};
/// Visits and deliveries of so many days after today are told (our choice).
inline constexpr int days_ahead = 7;

struct TodayRow {
  std::string id;  ///< stays the same while the same thing is to be done
  Work work = Work::orders;
  Urgency urgency = Urgency::today;
  std::string title;     ///< what kind of thing, in a few words
  std::string sentence;  ///< what and why, with names and figures
  std::string help;      ///< what the kind means, and what is to be done about it
  std::string action;    ///< the label of the button that leads there
  Destination destination;
  int count = 1;  ///< things of the row, which may stand for many
};

/// "Ordering and receiving", "Patients", "Billing".
[[nodiscard]] std::string work_words(Work work);
/// "Overdue", "Today", "This week".
[[nodiscard]] std::string urgency_words(Urgency urgency);

/// What kind of thing a row is about: texts marked with to_say.
struct RowKind {
  const char* title;
  const char* help;
  const char* action;
};
[[nodiscard]] TodayRow start_row(std::string id, Work work, Urgency urgency, const RowKind& kind,
                                 std::string sentence);

/// By job, then by urgency; rows of the same urgency keep their order.
void sort_today(std::vector<TodayRow>& rows);

/// A few names of many: "A, B, C and 4 more".
[[nodiscard]] std::string some_words(const std::vector<std::string>& names, std::size_t most = 3);

}  // namespace sparewell::desk
