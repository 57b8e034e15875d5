"""Count a sample in tens: each is weighed as it is put on, and one that is no ten is pointed out.

What comes of it is an ordinary sample; its tens are looked at and not written down.
"""

from __future__ import annotations

from decimal import Decimal

from kiosk.estimating.tens import TEN, Tens
from kiosk.estimating.usual_pieces import USUAL_PIECE_GRAMS
from kiosk.procedures.begin_key import S
from kiosk.procedures.key_procedure import TRAY_DIVISIONS
from kiosk.procedures.procedure import Person, PersonEvent, WeighAgain
from kiosk.procedures.sample_on_tray import SampleOnTray
from kiosk.weighing.pan_events import PanEvent

LEAST_SHARE = Decimal("0.5")  # of a ten; less is still being put on
GUESSED_SHARE = Decimal("0.2")  # ... where nobody knows what such pieces weigh
FEW = 3  # tens


class CountInTens(SampleOnTray):
    """Offers it where the balance sees a single piece.

    `tens` are the readings so far: the one before the first ten, then one after each. `odd` is the
    place (from 1) of a ten that seems to be none, and by how many pieces about.
    """

    tens: tuple[Decimal, ...] = ()
    odd: tuple[int, int] | None = None
    _sure: frozenset[int] = frozenset()

    @property
    def tens_wanted(self) -> int:
        """How many make a sample."""
        return self.kept.pieces // TEN

    @property
    def tens_done(self) -> int:
        """How many were put on and looked right."""
        return max(0, len(self.tens) - 1)

    @property
    def first_two(self) -> bool:
        """Whether a ten was compared with a single other one: either may be wrong."""
        return self.tens_done == 1 and not self.kept.samples

    def offers(self, person: Person) -> bool:
        """Tens, where a ten that is a piece off can be told and a sample is some tens."""
        if person is Person.TENS:
            return super().offers(person) and self._can_tell()
        return super().offers(person)

    def _can_tell(self) -> bool:
        known = self._known_tens()
        whole = self.kept.pieces % TEN == 0 and self.tens_wanted > 1
        return whole and known is not None and known.tell

    def _masses(self) -> list[Decimal]:
        return [after - before for before, after in zip(self.tens, self.tens[1:], strict=False)]

    def _known_tens(self) -> Tens | None:
        """From those on the tray and the kept samples; before the first, what is usual."""
        draft = self.kept
        if not draft.piece_cv_percent or not draft.readability:
            return None
        masses = [*self._masses(), *(net * TEN / draft.pieces for net in draft.sample_nets)]
        if not masses and draft.material in USUAL_PIECE_GRAMS:
            masses = [USUAL_PIECE_GRAMS[draft.material] * TEN]
        if not masses:
            return None
        return Tens(
            masses=masses, cv=float(draft.piece_cv_percent) / 100, readability=draft.readability
        )

    def _begin_tens(self, _event: PersonEvent) -> S:
        assert self.taken_off is not None
        self.tens, self.odd, self._sure = (self.taken_off,), None, frozenset()
        self._do(WeighAgain())
        return S.TENS

    def _stop_tens(self, _event: PersonEvent) -> S:
        """What lies there can be made up to a sample without them."""
        self.tens = ()
        self._do(WeighAgain())
        return S.ADD if self.adding else S.COUNT

    def _tens_away(self, event: PanEvent) -> S:
        self.tens = ()
        return self._moved(event)

    def _judge_ten(self, event: PanEvent) -> S:
        self._settled = event
        known, gross = self._known_tens(), event.grams or Decimal(0)
        assert known is not None
        near = TRAY_DIVISIONS * (event.readability or Decimal(0))
        ten = gross - self.tens[-1]
        if ten < -near:
            return self._taken_off_again(gross, near)
        compared = bool(self.tens_done or self.kept.samples)
        if ten < (LEAST_SHARE if compared else GUESSED_SHARE) * known.usual:
            return S.TENS
        off = known.off(ten) if compared else 0
        if off:
            self.odd = self.tens_done + 1, off
            return S.ODD_TEN
        return self._take_ten(gross)

    def _taken_off_again(self, gross: Decimal, near: Decimal) -> S:
        """Back to a reading from before; any other mass is not known to be tens."""
        for place, before in enumerate(self.tens):
            if abs(gross - before) <= near:
                self.tens = self.tens[: place + 1]
                self._sure = frozenset(sure for sure in self._sure if sure <= place)
                return S.TENS
        self.tens = ()
        self._on_it.lifted()
        return S.EMPTY_TRAY

    def _take_ten(self, gross: Decimal) -> S:
        self.tens = (*self.tens, gross)
        return self._next_ten()

    def _next_ten(self) -> S:
        self.odd = self._odd_below()
        if self.odd is not None:
            return S.ODD_TEN
        if self.tens_done < self.tens_wanted:
            return S.TENS
        self.tens = ()
        self._on_it.emptied = not self.adding  # each of these pieces was seen to come
        return S.READY

    def _odd_below(self) -> tuple[int, int] | None:
        """The first tens were compared with few; what they hide shows once there are more."""
        known = self._known_tens()
        if known is None or self.tens_done < FEW:
            return None
        for place, mass in enumerate(self._masses(), start=1):
            if place not in self._sure and (off := known.off(mass)):
                return place, off
        return None

    def _it_is_ten(self, _event: PersonEvent) -> S:
        assert self.odd is not None
        assert self._settled is not None
        place, _ = self.odd
        self._sure |= {place}
        on_top = place > self.tens_done
        return self._take_ten(self._settled.grams or Decimal(0)) if on_top else self._next_ten()
