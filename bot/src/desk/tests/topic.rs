//! Whether a kept position shows its topic, worked out from its report and the topic it has now.

use super::*;

/// The back rank at the end of the only full-length line.
const BACK_RANK: &str =
    "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - id \"two\"; dm 2; c0 \"Smothered mate\";";
/// The queen is offered for the back rank, and can be declined.
const OFFER: &str = "[Id \"offer\"]\n[Topic \"Back-rank mate\"]\n[Task \"+\"]\n[SetUp \"1\"]\n\
    [FEN \"2r3k1/5ppp/5b2/2Q1R3/2q5/8/N4PPP/6K1 w - - 0 1\"]\n\n\
    1. Qxc4 Rxc4 (1... Rb8 2. Re1 $18) 2. Re8# *\n";

impl Club {
    async fn set_topic(&self, position: PositionId, topic: &str) -> Option<TopicCheck> {
        let topic = TopicName::filled_in(Some(topic)).expect("a name");
        let coach = self.desk.coach();
        let set = coach.set_topic(&self.place, &self.coach, position, topic);
        set.await.expect("set")
    }

    /// How the position stands to its topic: on the shelf, and in the week.
    async fn stands(&self, position: PositionId) -> [Option<TopicState>; 2] {
        let kept = self
            .desk
            .coach()
            .checked(&self.place, &self.coach, position)
            .await
            .expect("kept");
        let week = self.desk.coach().queue(&self.place).await.expect("read");
        let item = week
            .iter()
            .find(|item| item.holds.position() == Some(position));
        let item = item.expect("it waits");
        assert_eq!(
            item.holds.topic_is_doubtful(),
            kept.topic_check().is_some_and(|check| check.is_doubtful())
        );
        let state = |check: &TopicCheck| check.verdict;
        [
            kept.topic_check().as_ref().map(state),
            item.holds.topic_check().map(state),
        ]
    }

    /// Checks a file of one position and puts it into the week.
    async fn waiting(&self, file: &str) -> (CheckedPosition, PositionId) {
        let [checked] = &self.import(&self.place, file).await[..] else {
            panic!("one position")
        };
        let position = checked.position.expect("kept");
        let coach = self.desk.coach();
        let put = coach.enqueue(&self.place, &self.coach, position, false);
        put.await.expect("sound, whatever its topic");
        (checked.clone(), position)
    }
}

#[tokio::test]
async fn a_topic_that_is_changed_is_held_against_the_kept_report() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let (checked, position) = club.waiting(BACK_RANK).await;
    let not_verified = Some(TopicState::NotVerified);
    let check = checked.topic_check().expect("it has a topic");
    assert_eq!(check.verdict, TopicState::NotVerified);
    assert_eq!(check.pattern, Some("smothered"));
    assert_eq!(
        english().tell(&check.facts),
        "Topic not verified, Smothered mate: the main line 1.Rxd8+ Rxd8 2.Rxd8# ends with 2.Rxd8# in \
         another picture, Back-rank mate."
    );
    assert_eq!(club.stands(position).await, [not_verified; 2]);

    let verified = Some(TopicState::Verified);
    let set = club.set_topic(position, "Grundreihenmatt").await;
    assert_eq!(set.map(|check| check.verdict), verified);
    assert_eq!(club.stands(position).await, [verified; 2]);

    let label = Some(TopicState::Label);
    let set = club.set_topic(position, "Exchanges").await;
    assert_eq!(set.map(|check| check.verdict), label);
    assert_eq!(club.stands(position).await, [label; 2]);

    assert_eq!(club.set_topic(position, " ").await, None);
    assert_eq!(club.stands(position).await, [None; 2]);

    // By its place in the week, too.
    let item = club.desk.coach().queue(&club.place).await.expect("read")[0].id;
    let topic = Some("Boden's mate".parse().expect("a name"));
    let coach = club.desk.coach();
    let set = coach.set_item_topic(&club.place, &club.coach, item, topic);
    set.await.expect("set");
    assert_eq!(club.stands(position).await, [not_verified; 2]);
}

#[tokio::test]
async fn an_offer_that_may_be_declined_is_verified_on_the_coachs_line() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let (checked, position) = club.waiting(OFFER).await;
    let check = checked.topic_check().expect("it has a topic");
    assert_eq!(check.verdict, TopicState::Verified);
    assert_eq!(
        english().tell(&check.facts),
        "Topic verified: Back-rank mate is on the board after 2.Re8#, at the end of your line \
         1.Qxc4 Rxc4 2.Re8#. From 2.Re8# on the mate is proved. One of your lines ends without mate: \
         1.Qxc4 Rb8 2.Re1."
    );
    assert_eq!(club.stands(position).await, [Some(TopicState::Verified); 2]);
}

/// What members see of a position whose topic is not verified is what they see of any other.
#[tokio::test]
async fn members_are_shown_no_mark() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let (_, position) = club.waiting(BACK_RANK).await;
    let coach = club.desk.coach();
    let preview = coach.preview(&club.place, &club.coach, position);
    let doubtful = preview.await.expect("drawn");
    assert_eq!(doubtful.topic.as_deref(), Some("Smothered mate"));
    assert_eq!(doubtful.problem().words, "");
    let post = coach.post_now(&club.place, &club.coach, None);
    post.await.expect("it needs no more than any other");
    assert_eq!(club.carry_all().await, ["post 1"]);
}
