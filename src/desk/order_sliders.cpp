#include "desk/order_sliders.hpp"

#include <algorithm>
#include <cmath>

#include "clinic/say.hpp"
#include "desk/budget_typed.hpp"
#include "desk/slider_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr std::size_t days_kept = 6;
constexpr double unmoved = 1e-6;  // of percent
constexpr int wanted_steps = 100;

/// What all of today's orders cost in the clinic's currency, with what a budget holds back.
double whole_cost(const Day& day) {
  const Currency& currency = day.clinic().settings.currency;
  double sum = 0;
  const auto add = [&](const supply::ProposalLine& line) {
    if (!line.unit_cost || line.unit_cost->currency != currency) return;
    sum += line.unit_cost->major() * (line.quantity + line.reason.left_out_for_budget);
  };
  for (const auto& line : day.assessment().proposal) add(line);
  for (const auto& held : day.assessment().held) add(held.line);
  return sum;
}

Money budget_of(double major, const Currency& currency) {
  const Money one{1, currency};
  return {static_cast<std::int64_t>(std::llround(major / one.major())), currency};
}

}  // namespace

supply::OrderPolicy policy(const SliderSetting& setting, const Day& day) {
  auto made = supply::policy_of(day.clinic().settings);
  made.budget = setting.budget;
  if (std::abs(setting.target_percent / 100 - made.service_target) > unmoved / 100) {
    made.service_target = setting.target_percent / 100;
    made.costs.shortage.reset();
  }
  if (setting.wait_days > 0) made.order_on = day.today() + days{setting.wait_days};
  return made;
}

std::shared_ptr<const supply::DecidedOrders> DecisionBench::decide(const SliderSetting& setting) {
  const Assessment& assessment = day_->assessment();
  if (!began_) lives_ = without_held(assessment.lives, assessment.held_needs);
  began_ = true;
  const Date order_on = day_->today() + days{setting.wait_days};
  auto found = std::ranges::find_if(outlooks_, [&](const auto& o) { return o.first == order_on; });
  if (found != outlooks_.end()) {
    std::rotate(found, found + 1, outlooks_.end());
  } else {
    if (outlooks_.size() == days_kept) outlooks_.erase(outlooks_.begin());
    outlooks_.emplace_back(order_on, std::make_unique<supply::OrderOutlook>(
                                         assessment.clinic, lives_, day_->today(), order_on));
  }
  return std::make_shared<const supply::DecidedOrders>(
      supply::decide(*outlooks_.back().second, policy(setting, *day_)));
}

OrderSliders::OrderSliders() : table_{slider_columns()} {}

void OrderSliders::show(DayPtr day) {
  day_ = std::move(day);
  usual_ = {100 * day_->clinic().settings.service_target, 0, day_->assessment().budget};
  setting_ = answered_ = usual_;
  by_settings_.reset();
  decided_.reset();
  const double whole = std::max(1.0, whole_cost(*day_));
  const double power = std::pow(10, std::floor(std::log10(whole / wanted_steps)));
  budget_unit_ = power;
  for (const double times : {1.0, 2.0, 5.0, 10.0}) {
    budget_unit_ = times * power;
    if (whole / budget_unit_ <= wanted_steps) break;
  }
  budget_steps_ = static_cast<int>(std::ceil(whole / budget_unit_));
  table_.fill({});
}

void OrderSliders::set(const SliderSetting& setting) {
  setting_ = setting;
  setting_.target_percent = std::clamp(setting.target_percent, least_target(), most_target_percent);
  if (std::abs(setting_.target_percent - usual_.target_percent) < unmoved) {
    setting_.target_percent = usual_.target_percent;
  }
  setting_.wait_days = std::clamp(setting.wait_days, 0, most_wait_days);
}

double OrderSliders::least_target() const {
  return std::min(least_target_percent, std::floor(usual_.target_percent));
}

int OrderSliders::budget_step() const {
  if (!setting_.budget) return budget_steps_;
  const auto step = std::llround(setting_.budget->major() / budget_unit_);
  return static_cast<int>(std::clamp<long long>(step, 0, budget_steps_));
}

std::optional<Money> OrderSliders::budget_at(int step) const {
  if (!day_ || step >= budget_steps_) return std::nullopt;
  return budget_of(step * budget_unit_, day_->clinic().settings.currency);
}

std::string OrderSliders::target_words() const {
  return say("{:.4g} %", setting_.target_percent);
}

std::string OrderSliders::wait_words() const {
  if (!day_ || setting_.wait_days == 0) return said("order today");
  return say("order on {}", date_words(day_->today() + days{setting_.wait_days}));
}

std::string OrderSliders::budget_words() const {
  return setting_.budget ? say("at most {}", amount_words(*setting_.budget)) : said("no budget");
}

std::string OrderSliders::budget_text() const {
  return setting_.budget ? plain_text(*setting_.budget) : "";
}

Expected<std::optional<Money>> OrderSliders::read_budget(const std::string& text) const {
  if (!day_) return std::nullopt;
  return budget_typed(text, day_->clinic().settings.currency);
}

void OrderSliders::answer(DecidedPtr usual, DecidedPtr of_setting, const SliderSetting& setting) {
  by_settings_ = std::move(usual);
  decided_ = std::move(of_setting);
  answered_ = setting;
  table_.fill(slider_rows(by_settings_->outcome, decided_->outcome));
}

std::string OrderSliders::summary() const {
  if (!decided_) return said("Working out what the sliders change...");
  if (answered_ == usual_) {
    return said("The sliders stand at the clinic's settings: these are today's orders.");
  }
  return difference_words(by_settings_->outcome, decided_->outcome);
}

bool OrderSliders::only_budget() const {
  return setting_.target_percent == usual_.target_percent &&
         setting_.wait_days == usual_.wait_days && setting_.budget != usual_.budget;
}

std::string OrderSliders::caution() {
  return said(
      "Nothing is written by moving a slider: orders are written by the clinic's settings.");
}

}  // namespace sparewell::desk
