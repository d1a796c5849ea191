#include "desk/today/orders_today.hpp"

#include <algorithm>
#include <map>

#include "clinic/say.hpp"
#include "desk/booking_rows.hpp"
#include "desk/draft_orders.hpp"
#include "desk/order_book.hpp"
#include "desk/order_words.hpp"
#include "desk/supplier_totals.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// Bookings are told one a row, up to so many.
constexpr std::size_t most_bookings = 5;

OrderName name_of(const OrderView& view) {
  return {view.order.ref, view.order.supplier.text};
}

class OrdersFinder {
 public:
  explicit OrdersFinder(const Day& day) : day_{day}, today_{day.today()} {}

  std::vector<TodayRow> all() {
    const auto views = order_views(day_.clinic(), today_);
    for (const auto& total : supplier_totals(day_)) due(total);
    left_out();
    drafts();
    for (const auto& view : views) approval(view);
    late(views);
    expected(views);
    bookings();
    return std::move(rows_);
  }

 private:
  TodayRow& add(std::string id, Urgency urgency, const char* title, std::string sentence,
                const char* help, const char* action) {
    return rows_.emplace_back(start_row(std::move(id), Work::orders, urgency, {title, help, action},
                                        std::move(sentence)));
  }

  void due(const SupplierTotal& total) {
    const auto& lines = day_.assessment().proposal;
    const auto of_supplier = [&](const auto& line) { return line.supplier == total.supplier; };
    const auto first = std::ranges::find_if(lines, of_supplier);
    const bool late = std::ranges::any_of(
        lines, [&](const auto& line) { return of_supplier(line) && line.order_by < today_; });
    const auto count = static_cast<unsigned long>(total.lines);
    auto sentence =
        total.supplier.empty()
            ? say_n("{} line is to be ordered today from no supplier that is recorded",
                    "{} lines are to be ordered today from no supplier that is recorded", count,
                    count)
            : say_n("{0} line is to be ordered today from {1}",
                    "{0} lines are to be ordered today from {1}", count, count,
                    total.supplier.text);
    if (!total.goods.empty()) sentence += fmt::format(", {}", amounts_words(total.goods));
    if (total.lines_without_price > 0) {
      sentence +=
          say_n(", {} line without a price", ", {} lines without a price",
                static_cast<unsigned long>(total.lines_without_price), total.lines_without_price);
    }
    auto& row = add(fmt::format("due {}", total.supplier.text),
                    late ? Urgency::overdue : Urgency::today, to_say("Order today"), sentence + ".",
                    to_say("An order on the next order day would come too late for the wanted "
                           "chance of not running out. Overdue: some line would better have been "
                           "ordered on an earlier day. Look at the lines and their reasons, then "
                           "write the order workbooks."),
                    to_say("Go to today's orders"));
    row.count = total.lines;
    row.destination.to = Destination::To::order_lines;
    if (first != lines.end()) row.destination.item = first->item;
  }

  void left_out() {
    const auto& held = day_.assessment().held;
    if (held.empty()) return;
    const auto count = held.size();
    std::vector<std::string> items;
    for (const auto& each : held) items.push_back(each.line.item.text);
    auto& row = add("left out", Urgency::today, to_say("Left out for the budget"),
                    say_n("The budget leaves nothing for {} line that is needed: {}.",
                          "The budget leaves nothing for {} lines that are needed: {}.", count,
                          count, some_words(items)),
                    to_say("These lines are needed and stand on none of today's orders. Raise the "
                           "budget, or accept that they may run out."),
                    to_say("Go to what is held back"));
    row.count = static_cast<int>(count);
    row.destination.then = Command::held_back;
  }

  void drafts() {
    const auto written = draft_orders(day_.clinic());
    if (written.empty()) return;
    std::vector<std::string> names;
    Date first = today_;
    for (const auto& draft : written) {
      names.push_back(say("{} for {}", draft.number, draft.supplier.text));
      first = std::min(first, draft.written_on);
    }
    const auto count = written.size();
    auto& row = add("drafts", first < today_ ? Urgency::overdue : Urgency::today,
                    to_say("Not marked as sent"),
                    say_n("{} order was written and is not marked as sent: {}.",
                          "{} orders were written and are not marked as sent: {}.", count, count,
                          some_words(names)),
                    to_say("What is not marked as sent does not count as on order, so that it is "
                           "proposed again. Overdue: written on an earlier day."),
                    to_say("Mark as sent"));
    row.count = static_cast<int>(count);
    row.destination.then = Command::mark_as_sent;
  }

  void approval(const OrderView& view) {
    if (view.stage != supply::OrderStage::waiting_for_approval) return;
    const auto worth = supply::worth_of(view.order.lines, day_.clinic().settings.currency);
    auto& row =
        add(fmt::format("approve {}", DeliveriesPage::id_of(name_of(view))),
            view.created_on() < today_ ? Urgency::overdue : Urgency::today,
            to_say("Waits for approval"),
            say("Order {} at {} comes to {} and waits for approval since {}.", view.order.ref,
                view.order.supplier.text, worth_words(worth), date_words(view.created_on())),
            to_say("The order is above the sum from which a named person has to approve. "
                   "It cannot be placed before. Overdue: written on an earlier day."),
            to_say("Approve the order"));
    row.destination.to = Destination::To::delivery;
    row.destination.order = name_of(view);
    row.destination.then = Command::approve_order;
  }

  void late(const std::vector<OrderView>& views) {
    std::map<std::string, std::vector<const OrderView*>> of_supplier;
    for (const auto& view : views) {
      if (view.is_open() && view.overdue_days > 0) {
        of_supplier[view.order.supplier.text].push_back(&view);
      }
    }
    for (const auto& [supplier, orders] : of_supplier) {
      int pieces = 0;
      for (const auto* view : orders) pieces += view->order.outstanding();
      // The longest overdue comes first.
      const auto& worst = *orders.front();
      auto& row = add(
          fmt::format("late {}", supplier), Urgency::overdue, to_say("Late orders"),
          say_n("{0} order at {1} is {2} days late, {3} to come: {4}.",
                "{0} orders at {1} are up to {2} days late, {3} to come: {4}.", orders.size(),
                orders.size(), supplier, worst.overdue_days, pieces_words(pieces), names(orders)),
          to_say("The day that the supplier promised has passed, or the day on which its orders "
                 "usually arrive. Ask the supplier, and note a new day with \"Back-order\"."),
          to_say("Go to the late order"));
      row.count = static_cast<int>(orders.size());
      row.destination.to = Destination::To::delivery;
      row.destination.order = name_of(worst);
    }
  }

  static std::string pieces_words(int pieces) {
    return say_n("{} piece", "{} pieces", static_cast<unsigned long>(pieces), pieces);
  }
  static std::string names(const std::vector<const OrderView*>& orders) {
    std::vector<std::string> refs;
    for (const auto* view : orders) refs.push_back(view->order.ref);
    return some_words(refs);
  }

  void expected(const std::vector<OrderView>& views) {
    std::vector<const OrderView*> coming;
    for (const auto& view : views) {
      if (view.is_open() && view.overdue_days == 0 && view.expected_on &&
          *view.expected_on <= today_ + days{days_ahead}) {
        coming.push_back(&view);
      }
    }
    if (coming.empty()) return;
    const auto first = *coming.front()->expected_on;
    std::vector<std::string> words;
    for (const auto* view : coming) {
      words.push_back(say("{} from {} on {}", view->order.ref, view->order.supplier.text,
                          short_date_words(*view->expected_on)));
    }
    auto& row = add("expected", first <= today_ ? Urgency::today : Urgency::this_week,
                    to_say("Deliveries expected"),
                    say_n("{} delivery is expected within a week: {}.",
                          "{} deliveries are expected within a week: {}.", coming.size(),
                          coming.size(), some_words(words)),
                    to_say("By the promised day, or by when the supplier's orders usually arrive. "
                           "Receive the delivery when it has come."),
                    to_say("Go to the delivery"));
    row.count = static_cast<int>(coming.size());
    row.destination.to = Destination::To::delivery;
    row.destination.order = name_of(*coming.front());
  }

  Urgency urgency_of(const Reservation& booking) const {
    if (!booking.needed_on || *booking.needed_on > today_) return Urgency::this_week;
    return *booking.needed_on < today_ ? Urgency::overdue : Urgency::today;
  }

  void bookings() {
    std::vector<supply::Serving> unserved;
    for (const auto& serving : supply::servings(day_.clinic(), today_)) {
      if (serving.late + serving.missing > 0) unserved.push_back(serving);
    }
    for (std::size_t i = 0; i < std::min(unserved.size(), most_bookings); ++i) {
      booking(unserved[i]);
    }
    if (unserved.size() > most_bookings) more_bookings(unserved);
  }

  void booking(const supply::Serving& serving) {
    const auto& booked = *serving.booking;
    auto& row = add(fmt::format("booking {} {} {}", booked.patient.text, booked.item.text,
                                date_words(booked.needed_on, "")),
                    urgency_of(booked), to_say("Booked and not there"),
                    fmt::format("{}, {}: {}.", patient_words(day_, booked.patient),
                                booking_words(booked), serving_words(serving, today_)),
                    to_say("Pieces are booked for a visit, and neither the shelf nor the orders "
                           "can serve it by its day. Order them, hurry the supplier, or move the "
                           "visit."),
                    to_say("Go to the patient"));
    row.destination.to = Destination::To::patient;
    row.destination.patient = booked.patient;
  }

  void more_bookings(const std::vector<supply::Serving>& unserved) {
    const auto more = unserved.size() - most_bookings;
    auto& row = add("more bookings", urgency_of(*unserved[most_bookings].booking),
                    to_say("Booked and not there"),
                    say_n("{} more booking cannot be served by its day.",
                          "{} more bookings cannot be served by their days.", more, more),
                    to_say("The soonest bookings are told above, one a row."),
                    to_say("Go to the next patient"));
    row.count = static_cast<int>(more);
    row.destination.to = Destination::To::patient;
    row.destination.patient = unserved[most_bookings].booking->patient;
  }

  const Day& day_;
  Date today_;
  std::vector<TodayRow> rows_;
};

}  // namespace

std::vector<TodayRow> orders_today(const Day& day) {
  return OrdersFinder{day}.all();
}

}  // namespace sparewell::desk
